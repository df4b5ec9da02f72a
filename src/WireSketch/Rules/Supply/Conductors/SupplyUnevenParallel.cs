using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Conductors;

/// <summary>Parallel cables that do not share the current.</summary>
internal sealed class SupplyUnevenParallel : Rule
{
    /// <summary>Common practice, no published source.</summary>
    private const double Like = 1.05;

    public override RuleCard Card { get; } = new(
        Id: "supply/uneven-parallel",
        Severity.Warning,
        Title: "Parallel cables are unlike",
        Why: """
            Parallel cables share the current by their resistance. The shorter or thicker one carries more than its part, and its fuse opens
            first; then the other carries all. Cut them from one spool to one length.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 500 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 4 AWG red, length: 8 ft, fuse: { rating: 60 A, at: 8 in } }
              P2: { from: battery.+, to: inverter.+, wire: 4 AWG red, length: 6 ft, #! supply/uneven-parallel
                  fuse: { rating: 60 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 1/0 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 500 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 4 AWG red, length: 8 ft, fuse: { rating: 60 A, at: 8 in } }
              P2: { from: battery.+, to: inverter.+, wire: 4 AWG red, length: 8 ft, fuse: { rating: 60 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 1/0 AWG black, length: 12 in }
            """);

    /// <summary>One finding for each run that differs from the first of its kind.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var runs = install.Wiring.Runs.Where(r =>
            r.Kind is RunKind.Supply or RunKind.Ground && r.From.Length == 1 && r.To.Length == 1 && !r.IsTwoWire && !r.Conductors.IsEmpty);
        foreach (var group in runs.GroupBy(Ends))
        {
            var first = group.First();
            foreach (var run in group.Skip(1))
            {
                if (Differ(first.LengthTaken.Value, run.LengthTaken.Value))
                {
                    yield return Report(
                        RunText.LengthAt(run),
                        $"{RunText.Full(install, first)} and {RunText.Full(install, run)} lie parallel and differ in length by "
                            + $"{More(first.LengthTaken.Value, run.LengthTaken.Value):measured 2}",
                        "cut both to one length", run.Id, first.Id).With(ValueRole.Limit, new Share(Like - 1));
                }
                else if (Differ(WireSizes.CopperArea(first.Conductors[0]), WireSizes.CopperArea(run.Conductors[0])))
                {
                    yield return Report(
                        RunText.WireAt(run),
                        $"{RunText.Full(install, first)} and {RunText.Full(install, run)} lie parallel and differ in copper by "
                            + $"{More(WireSizes.CopperArea(first.Conductors[0]), WireSizes.CopperArea(run.Conductors[0])):measured 2}",
                        $"make {new WantedSize(run.Id, first.Wire.Size)} as well", run.Id, first.Id).With(
                            ValueRole.Limit, new Share(Like - 1)) with
                    {
                        Fixes = RunText.SizeFix(run, first.Wire.Size),
                    };
                }
            }
        }
    }

    /// <summary>The two places a run joins, whichever way it is written; outputs of one block are one place.</summary>
    private static string Ends(WiredRun run)
    {
        var a = Place(run.From[0]);
        var b = Place(run.To[0]);
        return string.CompareOrdinal(a, b) < 0 ? a + " " + b : b + " " + a;
    }

    private static string Place(RunEnd end) =>
        end.Gear.Joins.Any(j => j is TerminalJoin { Kind: ConnectionKind.Joint }) ? end.Gear.Id : end.Id;

    private static bool Differ(double a, double b) => Math.Max(a, b) > Math.Min(a, b) * Like;

    private static Share More(double a, double b) => new((Math.Max(a, b) / Math.Min(a, b)) - 1);
}
