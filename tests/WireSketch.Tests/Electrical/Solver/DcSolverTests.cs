using CsCheck;
using WireSketch.Electrical.Solver;

namespace WireSketch.Tests.Electrical.Solver;

public sealed class DcSolverTests
{
    [Fact]
    public void Kirchhoffs_law_holds_at_every_node() => Gen.Int[1, 1_000_000].Sample(
        seed =>
        {
            var answer = DcSolver.Solve(new RandomVehicle(seed, 20 + (seed % 100)).Make(0.5));
            Assert.InRange(answer.Residual, 0, 1e-9);
        },
        iter: 200);

    [Fact]
    public void More_copper_never_lowers_the_volts_of_the_only_load() => Gen.Int[1, 1_000_000].Sample(
        seed =>
        {
            var random = new Random(seed);
            var (tree, load) = Tree(random, 4 + random.Next(30));
            var watts = 100 + (random.NextDouble() * 300);
            var changed = tree.ToArray();
            var at = random.Next(tree.Count);
            changed[at] = changed[at] with { Ohms = changed[at].Ohms * random.NextDouble() };
            var before = Volts(tree, load, watts);
            var after = Volts(changed, load, watts);
            Assert.True(after >= before - (1e-9 * before), $"{before} {after}");
        },
        iter: 300);

    [Fact]
    public void Where_loads_are_currents_drops_follow_the_length() => Gen.Int[1, 1_000_000].Sample(
        seed =>
        {
            var random = new Random(seed);
            var (tree, _) = Tree(random, 3 + random.Next(30));
            var factor = 0.2 + (4 * random.NextDouble());
            var once = Drops(tree, 1);
            var longer = Drops([.. tree.Select(w => w with { Ohms = w.Ohms * factor })], 1);
            Assert.All(once.Zip(longer), d => Assert.Equal(d.First * factor, d.Second, 1e-9));
        },
        iter: 300);

    [Fact]
    public void The_order_of_branches_and_nodes_changes_nothing() =>
        Gen.Select(Gen.Int[1, 1_000_000], Gen.Int[10, 100], Gen.Double[0.1, 3]).Sample(OrderChangesNothing, iter: 300);

    /// <summary>
    /// Circuits for which it once did: one at its limit, and two in which a battery at rest stands almost without current.
    /// </summary>
    [Theory, InlineData(880736, 0.4), InlineData(2267, 2.4), InlineData(13426, 1.4)]
    public void The_order_changes_nothing_where_it_once_did(int seed, double scale) => OrderChangesNothing(seed, 40, scale);

    [Fact]
    public void The_limit_of_one_load_is_a_quarter_of_the_square_of_the_volts_over_the_resistance()
    {
        var circuit = new DcCircuit(3);
        circuit.Source(1, 0, 12, 0.05);
        circuit.Resistor(1, 2, 0.2);
        circuit.Power(2, 0, 200);
        var answer = Assert.IsType<DcSolution.Starved>(DcSolver.Solve(circuit));
        Assert.Equal(12.0 * 12.0 / (4 * 0.25) / 200, answer.Scale, 1e-14);
        Assert.Equal(6, answer.Volts[2], 1e-13);
    }

    [Fact]
    public void At_the_limit_of_the_power_volts_fall_with_the_root_of_what_is_left() => Gen.Int[1, 1_000_000].Sample(
        seed =>
        {
            // One feeder to several loads: E²/4R in all its forms. A limit that were only the solver's own would not have this shape.
            var random = new Random(seed);
            var (tree, _) = Tree(random, 6);
            DcCircuit Make(double scale)
            {
                var circuit = Wired(tree);
                for (var n = 2; n < circuit.Nodes; n++)
                {
                    circuit.Power(n, 0, scale * (500 + (100 * n)));
                }

                return circuit;
            }

            var starved = Assert.IsType<DcSolution.Starved>(DcSolver.Solve(Make(1000)));
            var limit = 1000 * starved.Scale;
            var worst = starved.Loads[0] + 2 - tree.Count - 1;
            double At(double share) => Assert.IsType<DcSolution.Found>(DcSolver.Solve(Make(limit * share))).Volts[worst];
            var (near, far) = (At(1 - 1e-4) - starved.Volts[worst], At(1 - 1e-2) - starved.Volts[worst]);
            Assert.InRange(far / near, 8, 12);
        },
        iter: 50);

    [Fact]
    public void A_load_without_a_way_back_takes_nothing_and_its_node_floats()
    {
        var circuit = new DcCircuit(4);
        circuit.Source(1, 0, 12.6, 0.01);
        circuit.Power(1, 2, 100);
        circuit.Resistor(2, 3, 1);
        var answer = Assert.IsType<DcSolution.Found>(DcSolver.Solve(circuit));
        Assert.Equal([false, false, true, true], answer.Floats);
        Assert.Equal([1], answer.Dead);
        Assert.All(answer.Amps, a => Assert.Equal(0, a, 1e-9));
    }

    [Fact]
    public void A_floating_circuit_with_a_battery_of_its_own_still_works()
    {
        var circuit = new DcCircuit(3);
        circuit.Source(1, 2, 12, 0.1);
        circuit.Resistor(1, 2, 1.1);
        var answer = DcSolver.Solve(circuit);
        Assert.True(answer.Floats[1]);
        Assert.Equal(11, answer.Volts[1] - answer.Volts[2], 1e-12);
        Assert.Equal(10, answer.Amps[1], 1e-12);
    }

    [Fact]
    public void A_reversed_power_load_is_dead()
    {
        var circuit = new DcCircuit(2);
        circuit.Source(1, 0, 12, 0.1);
        circuit.Power(0, 1, 50);
        var answer = Assert.IsType<DcSolution.Found>(DcSolver.Solve(circuit));
        Assert.Equal([1], answer.Dead);
        Assert.Equal(12, answer.Volts[1], 1e-9);
    }

    [Fact]
    public void Of_two_loads_the_one_at_the_end_of_the_thin_wire_starves()
    {
        var circuit = new DcCircuit(4);
        circuit.Source(1, 0, 12.6, 0.001);
        circuit.Resistor(1, 2, 0.002);
        var small = circuit.Power(2, 0, 50);
        var thin = circuit.Resistor(1, 3, 0.2);
        var large = circuit.Power(3, 0, 400);
        var answer = Assert.IsType<DcSolution.Starved>(DcSolver.Solve(circuit));
        Assert.Equal([large], answer.Loads);
        Assert.Equal(thin, answer.LimitingBranch);
        Assert.DoesNotContain(small, answer.Loads);
        Assert.InRange(answer.Scale, 0.48, 0.5);
    }

    [Fact]
    public void A_ring_of_no_resistance_does_not_matter()
    {
        var circuit = new DcCircuit(4);
        circuit.Source(1, 0, 10, 1);
        circuit.Resistor(1, 2, 0);
        circuit.Resistor(2, 3, 0);
        circuit.Resistor(3, 1, 0);
        circuit.Resistor(3, 0, 4);
        var answer = DcSolver.Solve(circuit);
        Assert.Equal(8, answer.Volts[3], 1e-12);
        Assert.Equal(2, answer.Amps[4], 1e-12);
        Assert.Equal(2, answer.Amps[1] - answer.Amps[3], 1e-12);
    }

    private static void OrderChangesNothing(int seed, int size, double scale)
    {
        var circuit = new RandomVehicle(seed, size).Make(scale);
        var random = new Random(seed);
        var nodes = Shuffled(random, circuit.Nodes);
        var branches = Shuffled(random, circuit.Branches.Count, keepFirst: false);
        var other = new DcCircuit(circuit.Nodes);
        foreach (var i in branches)
        {
            var b = circuit.Branches[i];
            Add(other, b with { A = nodes[b.A], B = nodes[b.B] });
        }

        var (one, two) = (DcSolver.Solve(circuit), DcSolver.Solve(other));
        Assert.Equal(one.GetType(), two.GetType());
        for (var n = 0; n < circuit.Nodes; n++)
        {
            Assert.Equal(one.Volts[n], two.Volts[nodes[n]], 1e-9);
        }

        if (one is DcSolution.Starved starved)
        {
            Assert.Equal(starved.Scale, ((DcSolution.Starved)two).Scale, 1e-10);
        }
    }

    private static (List<Wire> Tree, int Load) Tree(Random random, int nodes)
    {
        var tree = new List<Wire>();
        for (var n = 2; n < nodes; n++)
        {
            tree.Add(new(1 + random.Next(n - 1), n, 0.001 + (0.02 * random.NextDouble())));
        }

        return (tree, nodes - 1);
    }

    private static DcCircuit Wired(IReadOnlyCollection<Wire> tree)
    {
        var circuit = new DcCircuit(tree.Count + 2);
        circuit.Source(1, 0, 12.6, 0.004);
        foreach (var w in tree)
        {
            circuit.Resistor(w.A, w.B, w.Ohms);
        }

        return circuit;
    }

    private static double Volts(IReadOnlyCollection<Wire> tree, int load, double watts)
    {
        var circuit = Wired(tree);
        circuit.Power(load, 0, watts);
        return DcSolver.Solve(circuit) is DcSolution.Found found ? found.Volts[load] : 0;
    }

    private static double[] Drops(IReadOnlyCollection<Wire> tree, double amps)
    {
        var circuit = Wired(tree);
        for (var n = 2; n < circuit.Nodes; n++)
        {
            circuit.Current(n, 0, amps);
        }

        var volts = DcSolver.Solve(circuit).Volts;
        return [.. volts.Skip(2).Select(v => volts[1] - v)];
    }

    private static int[] Shuffled(Random random, int count, bool keepFirst = true)
    {
        var all = Enumerable.Range(0, count).ToArray();
        for (var i = count - 1; i > (keepFirst ? 1 : 0); i--)
        {
            var j = random.Next(keepFirst ? 1 : 0, i + 1);
            (all[i], all[j]) = (all[j], all[i]);
        }

        return all;
    }

    private static void Add(DcCircuit circuit, Branch b) => _ = b.Kind switch
    {
        BranchKind.Resistor => circuit.Resistor(b.A, b.B, b.Ohms),
        BranchKind.Source => circuit.Source(b.A, b.B, b.Value, b.Ohms),
        BranchKind.Battery => circuit.Battery(b.A, b.B, b.Value, b.Ohms, b.Limit),
        BranchKind.Regulated => circuit.Regulated(b.A, b.B, b.Value, b.Ohms, b.Limit),
        BranchKind.Current => circuit.Current(b.A, b.B, b.Value, b.Limit),
        BranchKind.Power => circuit.Power(b.A, b.B, b.Value),
        _ => circuit.Diode(b.A, b.B, b.Value, b.Ohms),
    };

    private readonly record struct Wire(int A, int B, double Ohms);
}
