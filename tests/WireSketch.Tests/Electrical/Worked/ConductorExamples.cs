using System.Collections.Immutable;
using WireSketch.Electrical.Hookups;
using WireSketch.Electrical.Solver;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Tests.Electrical.Worked;

/// <summary>
/// Conductors, adiabatic limits, faults and hookups on the worked examples CO, AD, FA, RG and HK; the source of each stands in its row.
/// </summary>
public sealed class ConductorExamples
{
    private static readonly Dictionary<string, Func<double>> Computed = new(StringComparer.Ordinal)
    {
        ["CO-01"] = () => WireSize.FromAwg(4).Area.Value,
        ["CO-02"] = () => WireSize.FromAwg(4).Area / WireSize.FromAwg(7).Area,
        ["CO-03"] = () => Math.Sqrt(WireSize.FromAwg(4).Area / WireSize.FromAwg(10).Area),
        ["CO-04"] = () => WireSize.FromAwg(4).Area / WireSize.FromAwg(14).Area,
        ["CO-06"] = () => Copper(4, 5, 20),
        ["CO-07"] = () => Copper(4, 5, 75),
        ["CO-08"] = () => Copper(4, 5, 105) / Copper(4, 5, 20),
        ["CO-10"] = () => (1 / Metal.Copper.Alpha) - 20,
        ["CO-13"] = () => 50 * Copper(8, 6, 20),
        ["CO-22"] = () =>
            Math.Log(1 / Metal.CopperCladAluminum.ShareOfCopper.Value) / Math.Log(WireSize.FromAwg(4).Area / WireSize.FromAwg(5).Area),
        ["AD-05"] = () => Metal.Copper.K(new(70), new(160)),
        ["AD-08"] = () => Metal.Copper.Withstand(new(1), new(20), new(1083)),
        ["FA-01"] = FaultAtTheFarEnd,
        ["RG-01"] = () => 1.5 * AmpacityTable.Of(WireSize.FromAwg(8), new(105))!.Value.Value,
        ["RG-02"] = () => 1.5 * AmpacityTable.Of(WireSize.FromAwg(8), new(60))!.Value.Value,
        ["RG-03"] = () => AmpacityTable.Of(WireSize.FromAwg(8), new(105))!.Value.Value * AmpacityTable.EngineSpaceFactor(new(105)).Value,
        ["HK-01"] = () => Hookups(2).Length,
        ["HK-02"] = () => Loads(2),
        ["HK-03"] = () => Hookups(3).Length,
        ["HK-04"] = () => Loads(3),
        ["HK-05"] = () => Hookups(4).Length,
        ["HK-06"] = () => Loads(4),
        ["HK-07"] = () => Hookups(5).Length,
        ["HK-08"] = () => Loads(5),
        ["HK-09"] = () => Hookups(6).Length,
        ["HK-10"] = () => Loads(6),
        ["HK-11"] = () => Hookups(7).Length,
        ["HK-12"] = () => Loads(7),
    };

    public static TheoryData<string> Ids => [.. Computed.Keys];

    [Theory, MemberData(nameof(Ids))]
    public void It_gives_the_value_of_the_example(string id) => WorkedExample.Check(id, Computed[id]());

    private static double Copper(int awg, double meters, double celsius) =>
        Metal.Copper.Resistance(WireSize.FromAwg(awg).Area, new(meters), new(celsius)).Value;

    private static double FaultAtTheFarEnd()
    {
        var circuit = new DcCircuit(4);
        circuit.Source(1, 3, 12.6, 0.005);
        circuit.Resistor(1, 2, Copper(8, 5, 20));
        circuit.Resistor(3, 0, 0.002);
        return new FaultNetwork(circuit).Short(2);
    }

    private static ImmutableArray<HookupOption> Hookups(int coils) => HookupFinder.Find([.. Enumerable.Repeat(new Ohms(4), coils)]);

    private static int Loads(int coils) => Hookups(coils).Select(h => Math.Round(h.Load.Value, 9)).Distinct().Count();
}
