using WireSketch.Electrical.Solver;

namespace WireSketch.Tests.Electrical.Worked;

/// <summary>The operating-point solver on the worked examples SP, DC and FA; the source of each stands in its row.</summary>
public sealed class DirectCurrentExamples
{
    /// <summary>Stands for a source without inner resistance where the example has none.</summary>
    private const double Stiff = 1e-13;

    private static readonly Dictionary<string, Func<double>> Computed = new(StringComparer.Ordinal)
    {
        ["SP-01"] = () => Series().Amps[1],
        ["SP-02"] = () => Series().Volts[2] - Series().Volts[3],
        ["SP-03"] = () =>
            Solve(2, Stiffly(9), c => c.Resistor(1, 0, 10000), c => c.Resistor(1, 0, 2000), c => c.Resistor(1, 0, 1000)).Amps[1..].Sum(),
        ["SP-04"] = () => Ohms(2, c => c.Resistor(1, 0, 10000), c => c.Resistor(1, 0, 2000), c => c.Resistor(1, 0, 1000)),
        ["SP-05"] = SeriesParallel,
        ["SP-06"] = SeriesParallel,
        ["SP-07"] = () => 24 / SeriesParallel(),
        ["SP-08"] = () => Divider(45, 5000, 17500),
        ["SP-09"] = () => Solve(3, Stiffly(13.8), c => c.Resistor(1, 2, 10000), c => c.Resistor(2, 0, 4700)).Volts[2],
        ["SP-10"] = () =>
            Solve(3, Stiffly(13.8), c => c.Resistor(1, 2, 10000), c => c.Resistor(2, 0, 4700), c => c.Resistor(2, 0, 4700)).Volts[2],
        ["DC-01"] = () => Millman(c => c.Resistor(1, 0, 2)).Volts[1],
        ["DC-02"] = () => -Millman(c => c.Resistor(1, 0, 2)).Amps[0],
        ["DC-03"] = () => -Millman(c => c.Resistor(1, 0, 2)).Amps[1],
        ["DC-04"] = () => Millman().Volts[1],
        ["DC-05"] = () => Millman().Volts[1] / -Millman(c => c.Resistor(1, 0, 0)).Amps[..2].Sum(),
        ["DC-06"] = () => Delivered(0.8),
        ["DC-07"] = () => Delivered(0.5),
        ["DC-08"] = () => Delivered(1.1),
        ["DC-09"] = () => TwoNodes().Volts[1],
        ["DC-10"] = () => TwoNodes().Volts[2],
        ["DC-11"] = () => TwoNodes().Volts[1],
        ["DC-12"] = () => Bridge().Volts[2],
        ["DC-13"] = () => Bridge().Volts[3],
        ["DC-14"] = () => Bridge().Amps[1..3].Sum(),
        ["DC-15"] = () => Bridge().Volts[2] - Bridge().Volts[3],
        ["DC-16"] = () => DeltaStar().Volts[2],
        ["DC-17"] = () => DeltaStar().Volts[2] - DeltaStar().Volts[3],
        ["DC-18"] = () => DeltaStar().Volts[2] - DeltaStar().Volts[3],
        ["DC-19"] = () => -Solve(2, c => c.Source(1, 0, 10, 0.2), c => c.Resistor(1, 0, 1)).Amps[0],
        ["DC-20"] = () => -Solve(2, c => c.Source(1, 0, 10, 0.2), c => c.Resistor(1, 0, 0)).Amps[0],
        ["DC-21"] = () => Solve(2, c => c.Source(1, 0, 12.6, 0.005), c => c.Current(1, 0, 180)).Volts[1],
        ["DC-22"] = () => TwoBatteries(0).Volts[1],
        ["DC-23"] = () => -TwoBatteries(0).Amps[0],
        ["DC-24"] = () => TwoBatteries(60).Volts[1],
        ["DC-25"] = () => -TwoBatteries(60).Amps[1],
        ["DC-26"] = () => Feeder(600).Volts[1],
        ["DC-27"] = () => Feeder(600).Amps[1],
        ["DC-29"] = () => Starved(2500) * 2500,
        ["DC-31"] = () => Feeder(1984.5).Volts[1],
        ["DC-32"] = () => TwoTaps().Volts[3],
        ["DC-33"] = () => TwoTaps().Volts[2],
        ["DC-34"] = () => Solve(2, c => c.Current(0, 1, 90), c => c.Resistor(1, 0, 0.004), c => c.Resistor(1, 0, 0.005)).Amps[1],
        ["DC-35"] = () => Offset(),
        ["DC-36"] = () =>
            Solve(2, c => c.Regulated(1, 0, 14.2, Stiff, 90), c => c.Source(1, 0, 12.6, 0.01), c => c.Current(1, 0, 120)).Volts[1],
        ["DC-37"] = () =>
            Solve(2, c => c.Regulated(1, 0, 14.2, 1e-11, 200), c => c.Source(1, 0, 12.8, 0.02), c => c.Current(1, 0, 40)).Amps[1..].Sum(),
        ["FA-02"] = () => -Solve(2, c => c.Source(1, 0, 12.6, 0.005), c => c.Resistor(1, 0, 0.002)).Amps[0],
        ["FA-03"] = () => new FaultNetwork(FromBothEnds()).Short(3),
    };

    public static TheoryData<string> Ids => [.. Computed.Keys];

    [Theory, MemberData(nameof(Ids))]
    public void The_solver_gives_the_value_of_the_example(string id) => WorkedExample.Check(id, Computed[id]());

    [Fact]
    public void A_power_beyond_the_limit_of_the_feeder_is_told_with_the_share_that_can_be_supplied()
    {
        // DC-30: E² − 4·R·P is below zero.
        Assert.True(WorkedExample.All["DC-29"].Expected < 2000);
        var answer = Assert.IsType<DcSolution.Starved>(Make(2, c => c.Source(1, 0, 12.6, 0.02), c => c.Power(1, 0, 2000)));
        Assert.Equal([1], answer.Loads);
        Assert.Equal(1984.5 / 2000, answer.Scale, 1e-8);
    }

    [Fact]
    public void The_lower_root_is_never_an_answer()
    {
        // DC-28 is that root.
        Assert.True(Feeder(600).Volts[1] > 10 * WorkedExample.All["DC-28"].Expected);
    }

    private static Action<DcCircuit> Stiffly(double volts) => c => c.Source(1, 0, volts, Stiff);

    private static DcSolution Make(int nodes, params Action<DcCircuit>[] branches)
    {
        var circuit = new DcCircuit(nodes);
        foreach (var add in branches)
        {
            add(circuit);
        }

        return DcSolver.Solve(circuit);
    }

    private static DcSolution.Found Solve(int nodes, params Action<DcCircuit>[] branches) =>
        Assert.IsType<DcSolution.Found>(Make(nodes, branches));

    private static double Ohms(int nodes, params Action<DcCircuit>[] branches) =>
        Solve(nodes, [c => c.Current(0, 1, 1), .. branches]).Volts[1];

    private static DcSolution.Found Series() =>
        Solve(4, Stiffly(9), c => c.Resistor(1, 2, 3000), c => c.Resistor(2, 3, 10000), c => c.Resistor(3, 0, 5000));

    private static double SeriesParallel() =>
        Ohms(3, c => c.Resistor(1, 2, 100), c => c.Resistor(1, 2, 250), c => c.Resistor(2, 0, 350), c => c.Resistor(2, 0, 200));

    private static double Divider(double volts, double first, double rest)
    {
        var answer = Solve(3, Stiffly(volts), c => c.Resistor(1, 2, first), c => c.Resistor(2, 0, rest));
        return answer.Volts[1] - answer.Volts[2];
    }

    private static DcSolution.Found Millman(params Action<DcCircuit>[] more) =>
        Solve(2, [c => c.Source(1, 0, 28, 4), c => c.Source(1, 0, 7, 1), .. more]);

    private static double Delivered(double ohms)
    {
        var answer = Millman(c => c.Resistor(1, 0, ohms));
        return answer.Volts[1] * answer.Amps[2];
    }

    private static DcSolution.Found TwoNodes() => Solve(
        3, c => c.Source(1, 0, 10, 2), c => c.Resistor(1, 0, 4), c => c.Resistor(1, 2, 2.5), c => c.Resistor(2, 0, 5),
        c => c.Source(2, 0, -4, 1));

    private static DcSolution.Found Bridge() => Solve(
        4, Stiffly(24), c => c.Resistor(1, 2, 150), c => c.Resistor(1, 3, 50), c => c.Resistor(2, 3, 100), c => c.Resistor(2, 0, 300),
        c => c.Resistor(3, 0, 250));

    private static DcSolution.Found DeltaStar() => Solve(
        4, Stiffly(10), c => c.Resistor(1, 2, 12), c => c.Resistor(1, 3, 18), c => c.Resistor(2, 3, 6), c => c.Resistor(2, 0, 18),
        c => c.Resistor(3, 0, 12));

    private static DcSolution.Found TwoBatteries(double load) =>
        Solve(2, c => c.Source(1, 0, 12.8, 0.008), c => c.Source(1, 0, 12.2, 0.012), c => c.Current(1, 0, load));

    private static DcSolution.Found Feeder(double watts) => Solve(2, c => c.Source(1, 0, 12.6, 0.02), c => c.Power(1, 0, watts));

    private static double Starved(double watts) =>
        Assert.IsType<DcSolution.Starved>(Make(2, c => c.Source(1, 0, 12.6, 0.02), c => c.Power(1, 0, watts))).Scale;

    private static DcSolution.Found TwoTaps() => Solve(
        4,
        c => c.Source(1, 0, 7995.0 / 682, Stiff),
        c => c.Resistor(1, 2, 0.01),
        c => c.Power(2, 0, 200),
        c => c.Resistor(2, 3, 0.01),
        c => c.Power(3, 0, 300));

    private static double Offset()
    {
        var answer = Solve(
            4, Stiffly(12), c => c.Current(1, 2, 40), c => c.Resistor(2, 0, 0.005), c => c.Current(1, 3, 1), c => c.Resistor(3, 0, 0.02));
        return answer.Volts[2] - answer.Volts[3];
    }

    private static DcCircuit FromBothEnds()
    {
        var circuit = new DcCircuit(4);
        circuit.Source(1, 0, 12.6, 0.005);
        circuit.Source(2, 0, 12.6, 0.01);
        circuit.Resistor(1, 3, 0.01);
        circuit.Resistor(2, 3, 0.01);
        return circuit;
    }
}
