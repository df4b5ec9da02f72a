using WireSketch.Electrical.Solver;
using WireSketch.Electrical.Speakers;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Testing;

namespace WireSketch.Tests.Electrical.Worked;

/// <summary>
/// Powers, corners and resonances of the worked examples PW, AC, CO, DC and RG that are not in the other classes; the source of each
/// stands in its row.
/// </summary>
public sealed class PowerExamples
{
    private static readonly Dictionary<string, Func<double>> Computed = new(StringComparer.Ordinal)
    {
        ["PW-01"] = () => PowerCurve.OfVolts(new(20)).At(new(4)).Value,
        ["PW-02"] = () => Curve("1 ohm: 500 W").VoltsAt(new(1)).Value,
        ["PW-03"] = () => Curve("4 ohm: 75 W").VoltsAt(new(4)).Value,
        ["PW-04"] = () => (Curve("2 ohm: 1000 W").VoltsAt(new(2)) / new Ohms(2)).Value,
        ["PW-19"] = () => Decibels.FromVoltageRatio(Math.Sqrt(2)).Value,
        ["PW-21"] = () => Music(800),
        ["PW-23"] = () => Supply(13.8, c => c.Power(1, 0, 1000 / 0.75)).Amps[1],
        ["PW-24"] = () => Heat(10, 60),
        ["PW-25"] = () => Heat(12, 25),
        ["PW-28"] = () => Heat(120, 60),
        ["DC-38"] = () => new AmpHours(70).Value / Supply(12, c => c.Current(1, 0, 3.5)).Amps[1],
        ["DC-40"] = () => ((new Volts(12.3) - new Volts(11.9)) / new Amps(40)).Value,
        ["CO-16"] = () => Supply(230, c => c.Resistor(1, 0, 2 * 10.09 * 2300 / 4107)).Amps[1],
        ["CO-17"] = () => ColdWires(15 * (1 + (0.004041 * 15))),
        ["RG-04"] = () => 1000 * Meters.FromInches(7).Value,
        ["RG-05"] = () => 1000 * Meters.FromInches(72).Value,
        ["AC-01"] = () => Corner(f => Ratio(f, 3, c => c.Resistor(1, 2, 500), c => c.Capacitor(2, 0, 7e-6)), 1),
        ["AC-04"] = () =>
            Corner(f => Ratio(f, 3, c => c.Resistor(1, 2, 500), c => c.Capacitor(2, 0, 7e-6), c => c.Resistor(2, 0, 1000)), 2.0 / 3),
        ["AC-06"] = () => Corner(f => Ratio(f, 3, c => c.Inductor(1, 2, 3), c => c.Resistor(2, 0, 1000)), 1),
        ["AC-08"] = () => Resonance(100e-3, 10e-6, 1),
        ["AC-09"] = () => Quality(100e-3, 10e-6, 1),
        ["AC-10"] = () => Resonance(100e-3, 10e-6, 1) / Quality(100e-3, 10e-6, 1),
        ["AC-31"] = () => ThirdOctave.Bands[3].Middle / ThirdOctave.Bands[0].Middle,
    };

    /// <summary>Rows whose figures nothing here computes, and why.</summary>
    private static readonly Dictionary<string, string> NotOurs = new(StringComparer.Ordinal)
    {
        ["PW-05"] = "peak volts: all volts of signals are rms here",
        ["PW-06"] = "peak to peak volts: all volts of signals are rms here",
        ["PW-07"] = "clipping of a bare bridge: the power is the maker's",
        ["PW-11"] = "a question of words",
        ["PW-26"] = "the largest volts for a resistor: its power at given volts is checked instead (PW-24, PW-25)",
        ["PW-27"] = "sums of band levels are not needed",
        ["DC-28"] = "the lower, unstable root: a test shows that it is never an answer",
        ["DC-30"] = "no number: a test shows that the load is told as starved",
        ["DC-39"] = "the share that may be used is a setting of our own",
        ["CO-05"] = "circular mils are not read; the tables above convert them",
        ["CO-09"] = "the form with beta: ours is the one with alpha (CO-08), 5e-5 away",
        ["CO-11"] = "largest resistance of a class: computed from the section here, whatever the class",
        ["CO-12"] = "as CO-11",
        ["CO-14"] = "10.09 ohm cmil/ft is copper at another temperature",
        ["CO-15"] = "as CO-14",
        ["CO-18"] = "the purest aluminum: ours is conductor grade",
        ["CO-19"] = "a row of the K factor table, tested there",
        ["CO-20"] = "the temperature of that factor, used in the tables",
        ["CO-21"] = "a conversion that the rule prints wrongly",
        ["CO-23"] = "steel carries no current here",
        ["AD-01"] = "k as printed, 115: ours is computed, 114.9 (AD-05 and the table of factors)",
        ["AD-02"] = "as AD-01",
        ["AD-03"] = "as AD-01",
        ["AD-04"] = "as AD-01, with 143",
        ["AD-06"] = "as AD-01",
        ["AD-07"] = "as AD-01; no number",
        ["AC-11"] = "Q of a given bandwidth: no filter of that kind",
        ["AC-12"] = "the capacitor is given, not chosen (AC-15 uses it)",
        ["AC-13"] = "the inductor is given, not chosen (AC-14 uses it)",
        ["AC-19"] = "the inductor is given, not chosen (AC-21 uses it)",
        ["AC-20"] = "the capacitor is given, not chosen (AC-21 uses it)",
        ["AC-32"] = "a box is not computed: its tuning is stated",
        ["AC-33"] = "practice: the paper for setting up says where it starts",
        ["AC-34"] = "practice, as AC-33",
        ["AC-35"] = "delays are measured in the vehicle",
        ["AC-36"] = "as AC-35",
    };

    public static TheoryData<string> Ids => [.. Computed.Keys];

    [Theory, MemberData(nameof(Ids))]
    public void It_gives_the_value_of_the_example(string id) => WorkedExample.Check(id, Computed[id]());

    [Fact]
    public void Every_row_is_tested_or_said_not_to_be_ours()
    {
        var rows = CsvTable.Parse(Repository.Read("tests/WireSketch.Tests/Data/worked-examples.csv")).Rows.Select(r => r["id"]).ToArray();
        var tested = new[] { Ids, AlternatingCurrentExamples.Ids, DirectCurrentExamples.Ids, ConductorExamples.Ids }
            .SelectMany(ids => ids.Select(id => id.Data))
            .ToArray();
        Assert.Empty(rows.Except(tested).Except(NotOurs.Keys));
        Assert.Empty(tested.Intersect(NotOurs.Keys));
        Assert.Empty(NotOurs.Keys.Except(rows));
    }

    private static PowerCurve Curve(string power)
    {
        var spec =
            Compiler.Compile(
                Example.File($"gear:\n  amp: {{ is: amplifier, channels: {{ sub: {{ power: {{ {power} }} }} }} }}\nruns: {{}}\n"),
                FilesInMemory.None).Spec;
        return PowerCurve.Of(((Amplifier)spec.Gear[0]).Channels[0]);
    }

    /// <summary>What an amplifier of so many watts and no losses takes on music, from the compiled answer.</summary>
    private static double Music(double watts)
    {
        var text = FormattableString.Invariant($$"""
            gear:
              battery: { is: battery, origin: factory, capacity: 100 Ah, internal: 1 mohm }
              radio: { is: head unit, origin: factory, outputs: { sub: { level: line, channels: 1, maximum: 4 V } } }
              amp: { is: amplifier, supply: { efficiency: 100 %, fuse: 80 A }, idle: 0 A, wakes-on: [remote], input: { line: 0.2 V to 6 V }, channels: { sub: { power: { 4 ohm: {{watts}} W }, minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 1000 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: amp.+, wire: 2 AWG red 105 C, length: 3 ft, fuse: { rating: 80 A, at: 8 in } }
              G1: { from: amp.-, to: bolt, wire: 2 AWG black 105 C, length: 1 ft }
              R1: { from: radio.remote, to: amp.remote, wire: 18 AWG, length: 3 ft }
              L1: { from: radio.sub, to: amp.in.left, wire: line pair, length: 3 ft }
              S1: { from: amp.sub, to: sub, wire: 10 AWG, length: 1 mm }
            """);
        var install = Compiler.Compile(Example.File(text), FilesInMemory.None).Install!;
        var loads = install.Answers.State(WireSketch.Language.SystemState.Music).Loads.Single(l => l.Path.Gear.Id == "amp");
        return loads.Watts.Value * watts
            / install.Answers.State(WireSketch.Language.SystemState.FullOutput).Loads.Single(l => l.Path.Gear.Id == "amp").Watts.Value;
    }

    private static DcSolution.Found Supply(double volts, params Action<DcCircuit>[] loads)
    {
        var circuit = new DcCircuit(2);
        circuit.Source(1, 0, volts, 1e-13);
        foreach (var add in loads)
        {
            add(circuit);
        }

        return Assert.IsType<DcSolution.Found>(DcSolver.Solve(circuit));
    }

    private static double Heat(double volts, double ohms)
    {
        var answer = Supply(volts, c => c.Resistor(1, 0, ohms));
        return answer.Volts[1] * answer.Amps[1];
    }

    /// <summary>14 V over two such wires into 250 ohm.</summary>
    private static double ColdWires(double ohms)
    {
        var circuit = new DcCircuit(4);
        circuit.Source(1, 0, 14, 1e-13);
        circuit.Resistor(1, 2, ohms);
        circuit.Resistor(2, 3, 250);
        circuit.Resistor(3, 0, ohms);
        var volts = DcSolver.Solve(circuit).Volts;
        return volts[2] - volts[3];
    }

    private static double Ratio(double hertz, int nodes, params Action<ComplexCircuit>[] parts)
    {
        var circuit = new ComplexCircuit(nodes, hertz);
        circuit.Source(1, 0, 1);
        foreach (var add in parts)
        {
            add(circuit);
        }

        return circuit.Solve().Volts[2].Magnitude;
    }

    /// <summary>Where a low-pass has lost 3 dB of what it passes at the bottom.</summary>
    private static double Corner(Func<double, double> ratio, double bottom) => Root(f => ratio(f) - (bottom / Math.Sqrt(2)), 1, 10000);

    private static System.Numerics.Complex Series(double hertz, double henries, double farads, double ohms)
    {
        var circuit = new ComplexCircuit(4, hertz);
        circuit.Inductor(1, 2, henries);
        circuit.Capacitor(2, 3, farads);
        circuit.Resistor(3, 0, ohms);
        return circuit.ImpedanceBetween(1, 0)!.Value;
    }

    private static double Resonance(double henries, double farads, double ohms) =>
        Root(f => -Series(f, henries, farads, ohms).Imaginary, 1, 10000);

    /// <summary>Resonance over the band in which the current is within 3 dB.</summary>
    private static double Quality(double henries, double farads, double ohms)
    {
        var middle = Resonance(henries, farads, ohms);
        double Over(double f) => Series(f, henries, farads, ohms).Magnitude - (ohms * Math.Sqrt(2));
        return middle / (Root(f => -Over(f), middle, 2 * middle) - Root(Over, middle / 2, middle));
    }

    /// <summary>Where a falling function passes nothing.</summary>
    private static double Root(Func<double, double> falling, double low, double high)
    {
        for (var i = 0; i < 200; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = falling(middle) > 0 ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
