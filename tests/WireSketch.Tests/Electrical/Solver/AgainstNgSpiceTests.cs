using System.Globalization;
using System.Numerics;
using WireSketch.Electrical.Solver;

namespace WireSketch.Tests.Electrical.Solver;

/// <summary>Our solver against a general circuit simulator, ngspice (Debian package ngspice), on generated networks.</summary>
public sealed class AgainstNgSpiceTests
{
    [Fact]
    public void Two_hundred_supply_networks_agree_to_a_millionth_at_every_node_and_branch()
    {
        NgSpice.Need();
        var worst = (Difference: 0.0, Where: "");
        var starved = 0;
        for (var seed = 1; seed <= 200; seed++)
        {
            var vehicle = new RandomVehicle(seed, seed % 10 == 0 ? 500 : 10 + (seed * 37 % 190));
            var scale = 1.0;
            while (DcSolver.Solve(vehicle.Make(scale)) is DcSolution.Starved)
            {
                scale *= 0.7;
                starved++;
            }

            var circuit = vehicle.Make(scale);
            var ours = Assert.IsType<DcSolution.Found>(DcSolver.Solve(circuit));
            Assert.InRange(ours.Residual, 0, 1e-9);

            var (volts, amps) = Simulate(circuit, ours.Volts);

            // Only then is the simulator's answer one: below its floor a load is no constant power any more.
            Assert.All(circuit.Branches.Where(b => b.Kind == BranchKind.Power), b => Assert.True(volts[b.A] - volts[b.B] > 2.5));
            var (v, atNode) = Differences.Worst(ours.Volts, volts);
            var flows = Enumerable.Range(0, amps.Length).Where(b => !double.IsNaN(amps[b])).ToArray();
            var (i, atFlow) = Differences.Worst([.. flows.Select(b => ours.Amps[b])], [.. flows.Select(b => amps[b])]);
            AssertBalanced(circuit, ours.Amps);
            worst = v > worst.Difference ? (v, $"network {seed}, node {atNode}") : worst;
            worst = i > worst.Difference ? (i, $"network {seed}, branch {flows[atFlow]}") : worst;
        }

        TestContext.Current.SendDiagnosticMessage(
            $"200 supply networks: worst relative difference {worst.Difference:g3} ({worst.Where}); {starved} were too heavily loaded "
                + "at first");
        Assert.True(worst.Difference <= 1e-6, $"{worst.Difference:g3} at {worst.Where}");
        Assert.True(starved > 0, "no network was near the limit of its power");
    }

    [Fact]
    public void A_hundred_speaker_networks_agree_to_a_millionth()
    {
        NgSpice.Need();
        var (worst, phasors) = (0.0, 0);
        for (var seed = 1; seed <= 100; seed++)
        {
            var network = new RandomSpeakers(seed);
            var ours = network.Solve();
            var values = NgSpice.Run(network.Deck());
            Assert.NotNull(values);
            for (var i = 0; i < ours.Length; i++)
            {
                var theirs = new Complex(
                    values[string.Create(CultureInfo.InvariantCulture, $"q{i}r")],
                    values[string.Create(CultureInfo.InvariantCulture, $"q{i}i")]);
                worst = Math.Max(worst, (ours[i] - theirs).Magnitude / Math.Max(theirs.Magnitude, 1e-6));
                phasors++;
            }
        }

        TestContext.Current.SendDiagnosticMessage($"100 speaker networks, {phasors} phasors: worst relative difference {worst:g3}");
        Assert.True(worst <= 1e-6, $"{worst:g3}");
    }

    /// <summary>Currents through branches of no resistance follow from all others: at every node all of them cancel.</summary>
    private static void AssertBalanced(DcCircuit circuit, double[] amps)
    {
        var sums = new double[circuit.Nodes];
        for (var i = 0; i < amps.Length; i++)
        {
            sums[circuit.Branches[i].A] += amps[i];
            sums[circuit.Branches[i].B] -= amps[i];
        }

        var most = amps.Max(Math.Abs);
        Assert.All(sums, s => Assert.InRange(Math.Abs(s), 0, 1e-9 * most));
    }

    /// <summary>
    /// The simulator starts from our volts to two decimals, or it may find the lower root of a constant power without a word: all further
    /// digits, and every ampere, are its own. Where it finds nothing from there, it starts from nothing; either root would be told apart.
    /// </summary>
    private static (double[] Volts, double[] Amps) Simulate(DcCircuit circuit, double[] near) =>
        NgSpice.Solve(circuit, n => Math.Round(near[n], 2))
            ?? NgSpice.Solve(circuit, null) ?? NgSpice.Solve(circuit, n => Math.Round(near[n], 6))
                ?? throw new InvalidOperationException("ngspice found no operating point.");
}
