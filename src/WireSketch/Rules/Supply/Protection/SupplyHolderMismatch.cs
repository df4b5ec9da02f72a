using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A block or bus bar that does not take what is put on it.</summary>
internal sealed class SupplyHolderMismatch : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/holder-mismatch",
        Severity.Warning,
        Title: "A holder, block or bus bar does not take what is put on it",
        Why: """
            A fuse of another body does not go into the holder; a cable too thick is trimmed, one too thin works loose; a bar loaded above
            its rating heats its own insulation. Choose the block after the cables and the current.
            """,
        new Basis.Reasoning("range of cable, number of studs, body of the fuse and current as the maker states them"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              block: { is: distribution block, outputs: 2, fits: 8 AWG to 4 AWG }
              pump: { is: pump, current: 20 A }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: block.in, wire: 1/0 AWG red, length: 12 ft, #! supply/holder-mismatch
                  fuse: { rating: 60 A, at: 10 in } }
              P2: { from: block.out.1, to: pump.+, wire: 8 AWG red, length: 3 ft }
              P3: { from: block.out.2, to: compressor.+, wire: 8 AWG red, length: 3 ft }
              G1: { from: pump.-, to: bolt, wire: 8 AWG black, length: 12 in }
              G2: { from: compressor.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              block: { is: distribution block, outputs: 2, fits: 8 AWG to 1/0 AWG }
              pump: { is: pump, current: 20 A }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: block.in, wire: 1/0 AWG red, length: 12 ft, fuse: { rating: 60 A, at: 10 in } }
              P2: { from: block.out.1, to: pump.+, wire: 8 AWG red, length: 3 ft }
              P3: { from: block.out.2, to: compressor.+, wire: 8 AWG red, length: 3 ft }
              G1: { from: pump.-, to: bolt, wire: 8 AWG black, length: 12 in }
              G2: { from: compressor.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        [.. Cables(install), .. Studs(install), .. Styles(install), .. Currents(install)];

    private IEnumerable<Finding> Cables(InstalledSystem install) =>
        from run in install.Wiring.Runs
        from end in run.From.Concat(run.To)
        let fits = end.Gear.JointLimits.Fits
        where fits is not null
            && (run.Wire.Size.Area.Value > fits.Value.Value.Most.Area.Value * 1.08
                || run.Wire.Size.Area.Value < fits.Value.Value.Least.Area.Value / 1.08)
        select Report(
            RunText.WireAt(run),
            $"{end.Gear.Id} takes {PrintedValue.Of(fits.Value.Value.Most, fits.Value.Words):limit}, and {run.Id} is "
                + $"{PrintedValue.Of(run.Wire.Size, RunText.Size(run)):measured}",
            $"choose a block that takes {RunText.Size(run)}, or another size for {run.Id}",
            run.Id, end.Id, end.Gear.Id);

    private IEnumerable<Finding> Studs(InstalledSystem install) =>
        from bar in install.Wiring.Gear
        let studs = bar.JointLimits.Lugs
        where studs is not null
        let lugs = install.Wiring.TerminalsOf(bar).SelectMany(t => install.Wiring.ConductorsAt[t.Index]).ToArray()
        where lugs.Length > studs.Value.Value
        select Report(
            studs.Value.At,
            $"{bar.Id} has {studs.Value.Value:limit} studs, and {lugs.Length:measured} wires land on it: "
                + $"{RunText.List(lugs.Select(l => l.RunId).Distinct(StringComparer.Ordinal))}",
            "choose a bar with more studs, or a second one", bar.Id);

    private IEnumerable<Finding> Styles(InstalledSystem install) =>
        from run in install.Wiring.Runs
        where run is { Holder: null, Run.Protection.Style: not null }
        let block = FuseBlock(run)
        where block.Style is not null && block.Style.Value.Value != run.Run.Protection!.Style!.Value.Value
        select Report(
            run.Run.Protection!.Style!.Value.At,
            $"{block.Id} holds {block.Style} fuses, and {run.Id} names a {run.Run.Protection.Style} fuse",
            $"write style: {block.Style}, or take the style out here", run.Id, block.Id) with
        {
            Fixes = [new($"write {block.Style}", [new(run.Run.Protection.Style.Value.At, block.Style!.Value.Words)])],
        };

    /// <summary>The block in which the fuse of a run stands, and the fuses that it holds.</summary>
    private static (string Id, Written<FuseStyle>? Style) FuseBlock(WiredRun run) =>
        (from end in run.From
         from fuse in end.Gear.Joins.OfType<TerminalJoin>()
         where fuse.FuseMayStandAtRun
         select (end.Gear.Id, fuse.Style)).FirstOrDefault();

    private IEnumerable<Finding> Currents(InstalledSystem install)
    {
        foreach (var gear in install.Wiring.Gear)
        {
            if (gear.JointLimits.Whole is { } most && Through(install, gear) is { } amps && amps > most.Value)
            {
                yield return Report(
                    most.At,
                    $"{gear.Id} carries {amps:measured} at full output and is rated {most:limit}",
                    "choose one that carries it, or divide the load",
                    gear.Id);
            }

            if (gear.JointLimits.Each is not { } each)
            {
                continue;
            }

            foreach (var cavity in install.Wiring.TerminalsOf(gear))
            {
                if (Into(install, [cavity]) is { } current && current > each.Value)
                {
                    yield return Report(
                        each.At,
                        $"{cavity} carries {current:measured} at full output, and a cavity of {gear.Id} is rated {each:limit}",
                        "use a larger plug, or two cavities in parallel if its maker allows",
                        gear.Id,
                        cavity.Id);
                }
            }
        }
    }

    private static Amps? Through(InstalledSystem install, Gear gear) =>
        Into(install, [.. install.Wiring.TerminalsOf(gear).Where(t => t.Shape.Name != "-")]);

    /// <summary>What comes in at some terminals at full output: half of all currents there, since it goes out again.</summary>
    private static Amps? Into(InstalledSystem install, Terminal[] terminals)
    {
        var all = terminals.SelectMany(t => install.Wiring.ConductorsAt[t.Index])
            .Distinct()
            .Select(c => SourceReach.Most(install, c))
            .ToArray();
        return all.Length == 0 || all.Any(a => a is null) ? null : new Amps(all.Sum(a => a!.Value.Value) / 2);
    }
}
