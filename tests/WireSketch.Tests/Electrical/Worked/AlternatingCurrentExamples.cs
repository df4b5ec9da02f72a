using System.Numerics;
using WireSketch.Electrical.Solver;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Tests.Electrical.Worked;

/// <summary>The network solver at one frequency on the worked examples LS, PW and AC; the source of each stands in its row.</summary>
public sealed class AlternatingCurrentExamples
{
    private static readonly Dictionary<string, Func<double>> Computed = new(StringComparer.Ordinal)
    {
        ["LS-01"] = () => Load(2, c => c.Resistor(1, 0, 4), c => c.Resistor(1, 0, 4)),
        ["LS-02"] = () => Load(3, c => c.Resistor(1, 2, 4), c => c.Resistor(2, 0, 4)),
        ["LS-03"] = () => Load(4, c => c.Resistor(1, 2, 4), c => c.Resistor(2, 0, 4), c => c.Resistor(1, 3, 4), c => c.Resistor(3, 0, 4)),
        ["LS-04"] = () => Load(3, c => c.Resistor(1, 2, 4), c => c.Resistor(1, 2, 4), c => c.Resistor(2, 0, 4), c => c.Resistor(2, 0, 4)),
        ["LS-05"] = () => Load(2, [.. Enumerable.Repeat<Action<ComplexCircuit>>(c => c.Resistor(1, 0, 4), 4)]),
        ["LS-06"] = () => Load(5, c => c.Resistor(1, 2, 4), c => c.Resistor(2, 3, 4), c => c.Resistor(3, 4, 4), c => c.Resistor(4, 0, 4)),
        ["LS-07"] = () => Load(2, [.. Enumerable.Repeat<Action<ComplexCircuit>>(c => c.Resistor(1, 0, 4), 3)]),
        ["LS-08"] = () => Load(3, c => c.Resistor(1, 2, 2), c => c.Resistor(2, 0, 2)),
        ["LS-09"] = () => Load(2, c => c.Resistor(1, 0, 2), c => c.Resistor(1, 0, 2)),
        ["LS-10"] = () => Load(2, c => c.Resistor(1, 0, 4), c => c.Resistor(1, 0, 8)),
        ["LS-11"] = () => Load(3, c => c.Resistor(1, 2, 4), c => c.Resistor(2, 0, 4), c => c.Resistor(2, 0, 4)),
        ["LS-12"] = () => Load(3, c => c.Resistor(1, 0, 4), c => c.Resistor(1, 2, 4), c => c.Resistor(2, 0, 4)),
        ["LS-13"] = () => ShareOfSecond(3, c => c.Resistor(1, 2, 4), c => c.Resistor(2, 0, 8)),
        ["LS-14"] = () => ShareOfSecond(2, c => c.Resistor(1, 0, 4), c => c.Resistor(1, 0, 8)),
        ["LS-15"] = WireShare,
        ["LS-16"] = () => Decibels.FromVoltageRatio(WireShare()).Value,
        ["LS-17"] = () => 1 - WireShare(),
        ["LS-18"] = () => Load(4, c => c.Resistor(1, 2, 4), c => c.Resistor(2, 0, 4), c => c.Resistor(1, 3, 4)),
        ["LS-19"] = () => Load(3, c => c.Resistor(1, 2, 4), c => c.Resistor(2, 0, 4), c => c.Resistor(2, 0, 4)),
        ["LS-20"] = () =>
            Load(
                4, c => c.Resistor(1, 2, 4), c => c.Resistor(1, 3, 8), c => c.Resistor(2, 3, 6), c => c.Resistor(2, 0, 8),
                c => c.Resistor(3, 0, 4)),
        ["PW-08"] = () => Bridged().Amps[2].Magnitude * Bridged().Amps[2].Magnitude * 4,
        ["PW-09"] = () => (10 / Bridged().Amps[0]).Magnitude,
        ["PW-10"] = () => 10 * Bridged().Amps[0].Magnitude,
        ["PW-12"] = () => Decibels.FromPowerRatio(2).Value,
        ["PW-13"] = () => Decibels.FromVoltageRatio(2).Value,
        ["PW-14"] = () => new Decibels(-3).VoltageRatio,
        ["PW-15"] = () => new Decibels(6).PowerRatio,
        ["PW-16"] = () => Decibels.FromPowerRatio(10).Value,
        ["PW-17"] = () => Decibels.FromVoltageRatio(100).Value,
        ["PW-18"] = () => Decibels.FromPowerRatio(15).Value,
        ["PW-20"] = () => new Decibels(-5).VoltageRatio,
        ["PW-22"] = () => Decibels.FromPowerRatio(1.0 / 8).Value,
        ["AC-02"] = RcWithLoad,
        ["AC-03"] = RcWithLoad,
        ["AC-05"] = () => Output(53.37, 3, c => c.Inductor(1, 2, 3), c => c.Resistor(2, 0, 1000)),
        ["AC-07"] = () => Output(200, 3, c => c.Capacitor(1, 2, 0.5e-6), c => c.Resistor(2, 0, 1000)),
        ["AC-14"] = () => Decibels.FromVoltageRatio(FirstOrder(1)).Value,
        ["AC-15"] = () => Impedance(3500, 3, c => c.Capacitor(1, 2, 1 / (2 * Math.PI * 3500 * 4)), c => c.Resistor(2, 0, 4)).Magnitude,
        ["AC-16"] = () => Decibels.FromVoltageRatio(FirstOrder(2)).Value,
        ["AC-17"] = () => ConstantResistance(700),
        ["AC-18"] = ZobelCapacitor,
        ["AC-21"] = () => Decibels.FromVoltageRatio(Butterworth(5000)).Value,
        ["AC-22"] = () => Decibels.FromVoltageRatio(Butterworth(2500)).Value,
        ["AC-23"] = () => Decibels.FromVoltageRatio(FirstOrder(1) * FirstOrder(1)).Value,
        ["AC-24"] = () => Decibels.FromVoltageRatio(FirstOrder(2) * FirstOrder(2)).Value,
        ["AC-25"] = () => Impedance(1000, 3, c => c.Resistor(1, 2, 6), c => c.Inductor(2, 0, 0.5e-3)).Magnitude,
        ["AC-26"] = () => CoilPower(),
        ["AC-27"] = () => ThirdOctave.Bands.Single(b => b.Nominal.Value == 1000).Lower.Value,
        ["AC-28"] = () => ThirdOctave.Bands.Single(b => b.Nominal.Value == 1000).Upper.Value,
        ["AC-29"] = () => ThirdOctave.Bands.Where(b => b.Nominal.Value == 1000).Sum(b => b.Upper.Value - b.Lower.Value),
        ["AC-30"] = () => ThirdOctave.Bands.Single(b => b.Nominal.Value == 80).Middle.Value,
    };

    public static TheoryData<string> Ids => [.. Computed.Keys];

    [Theory, MemberData(nameof(Ids))]
    public void The_network_solver_gives_the_value_of_the_example(string id) => WorkedExample.Check(id, Computed[id]());

    [Theory, InlineData(20), InlineData(500), InlineData(700), InlineData(20000)]
    public void A_constant_resistance_crossover_is_one_at_every_frequency(double hertz) =>
        WorkedExample.Check("AC-17", ConstantResistance(hertz));

    [Fact]
    public void Nothing_joined_has_no_impedance()
    {
        var circuit = new ComplexCircuit(4, 100);
        circuit.Resistor(1, 2, 4);
        Assert.Null(circuit.ImpedanceBetween(1, 0));
        Assert.Equal(4, circuit.ImpedanceBetween(1, 2)!.Value.Real, 1e-12);
    }

    private static ComplexCircuit Make(double hertz, int nodes, Action<ComplexCircuit>[] parts)
    {
        var circuit = new ComplexCircuit(nodes, hertz);
        foreach (var add in parts)
        {
            add(circuit);
        }

        return circuit;
    }

    private static Complex Impedance(double hertz, int nodes, params Action<ComplexCircuit>[] parts) =>
        Make(hertz, nodes, parts).ImpedanceBetween(1, 0)!.Value;

    private static double Load(int nodes, params Action<ComplexCircuit>[] parts)
    {
        var z = Impedance(1000, nodes, parts);
        Assert.Equal(0, z.Imaginary, 1e-12);
        return z.Real;
    }

    /// <summary>Volts at node 2 for one volt at node 1.</summary>
    private static double Output(double hertz, int nodes, params Action<ComplexCircuit>[] parts)
    {
        var circuit = Make(hertz, nodes, parts);
        circuit.Source(1, 0, Complex.One);
        return circuit.Solve().Volts[2].Magnitude;
    }

    private static double ShareOfSecond(int nodes, params Action<ComplexCircuit>[] coils)
    {
        var circuit = Make(1000, nodes, coils);
        circuit.Source(1, 0, Complex.One);
        var (_, amps) = circuit.Solve();
        var (four, eight) = (4 * amps[0].Magnitude * amps[0].Magnitude, 8 * amps[1].Magnitude * amps[1].Magnitude);
        return eight / (four + eight);
    }

    private static double WireShare() => Output(1000, 3, c => c.Resistor(1, 2, 0.1), c => c.Resistor(2, 0, 2));

    /// <summary>Two halves of 10 V in opposite phase with 4 ohm between them: currents of both halves and of the load.</summary>
    private static (Complex[] Volts, Complex[] Amps) Bridged() =>
        Make(1000, 3, [c => c.Source(0, 1, 10), c => c.Source(2, 0, 10), c => c.Resistor(2, 1, 4)]).Solve();

    private static double RcWithLoad() =>
        Output(30, 3, c => c.Resistor(1, 2, 500), c => c.Capacitor(2, 0, 7e-6), c => c.Resistor(2, 0, 1000));

    /// <summary>A first-order low-pass of 4 ohm and 500 Hz (the inductor of AC-13), at a multiple of its corner.</summary>
    private static double FirstOrder(double multiple) =>
        Output(500 * multiple, 3, c => c.Inductor(1, 2, WorkedExample.All["AC-13"].Expected), c => c.Resistor(2, 0, 4));

    private static double ConstantResistance(double hertz)
    {
        var (l, c) = (4 / (2 * Math.PI * 700), 1 / (2 * Math.PI * 700 * 4));
        return Impedance(
            hertz, 4, k => k.Inductor(1, 2, l), k => k.Resistor(2, 0, 4), k => k.Capacitor(1, 3, c), k => k.Resistor(3, 0, 4)).Magnitude;
    }

    /// <summary>The capacitor of AC-18 makes the load 6 ohm at every frequency; found again from the load at one of them.</summary>
    private static double ZobelCapacitor()
    {
        var (low, high) = (1e-6, 1e-4);
        for (var i = 0; i < 200; i++)
        {
            var c = (low + high) / 2;
            var z = Impedance(
                1000, 4, k => k.Resistor(1, 2, 6), k => k.Inductor(2, 0, 0.5e-3), k => k.Resistor(1, 3, 6), k => k.Capacitor(3, 0, c));
            (low, high) = z.Imaginary > 0 ? (c, high) : (low, c);
        }

        return low;
    }

    /// <summary>The filter of AC-19 and AC-20.</summary>
    private static double Butterworth(double hertz) => Output(
        hertz,
        3,
        c => c.Inductor(1, 2, WorkedExample.All["AC-19"].Expected),
        c => c.Capacitor(2, 0, WorkedExample.All["AC-20"].Expected),
        c => c.Resistor(2, 0, 4));

    private static double CoilPower()
    {
        var circuit = Make(1000, 3, [c => c.Resistor(1, 2, 6), c => c.Inductor(2, 0, 0.5e-3)]);
        circuit.Source(1, 0, 10);
        var amps = circuit.Solve().Amps[0].Magnitude;
        return amps * amps * 6;
    }
}
