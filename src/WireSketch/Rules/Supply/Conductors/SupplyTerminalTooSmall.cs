using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Supply.Conductors;

/// <summary>A cable that the terminal does not take.</summary>
internal sealed class SupplyTerminalTooSmall : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/terminal-too-small",
        Severity.Warning,
        Title: "The terminal does not take the cable",
        Why: """
            Strands trimmed off to make a cable fit are copper lost at the hottest place, and a thin wire in a large terminal works loose.
            A reducing pin or ferrule, made for it, lets a thick cable end in a smaller terminal.
            """,
        new Basis.Reasoning("the range of cable that the maker states for the terminal"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              plug: { is: connector, cavities: 2, gauge: 12 AWG, rating: 25 A }
              pump: { is: pump, current: 12 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: plug.1, wire: 8 AWG red, length: 8 ft, #! supply/terminal-too-small
                  fuse: { rating: 20 A, at: 8 in } }
              P2: { from: plug.1, to: pump.+, wire: 12 AWG red, length: 1 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              plug: { is: connector, cavities: 2, gauge: 12 AWG, rating: 25 A }
              pump: { is: pump, current: 12 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: plug.1, wire: 12 AWG red, length: 8 ft, fuse: { rating: 20 A, at: 8 in } }
              P2: { from: plug.1, to: pump.+, wire: 12 AWG red, length: 1 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from run in install.Wiring.Runs
        where !run.Wire.IsLinePair && !run.Conductors.IsEmpty
        from end in run.From.Concat(run.To)
        let fits = TerminalSizes.Fits(end)
        where fits is not null && !TerminalSizes.Takes(fits.Value.Range, run.Wire.Size)
        select Report(
            RunText.WireAt(run),
            $"{end.Id} takes {PrintedValue.Of(fits.Value.Range.Most, fits.Value.Words):limit}, and {run.Id} is "
                + $"{PrintedValue.Of(run.Wire.Size, RunText.Size(run)):measured}",
            run.Wire.Size > fits.Value.Range.Most
                ? FindingText.Of(
                    $"end {run.Id} in a reducing pin or ferrule made for {end.Gear.Id} and accept this with that as the reason, or make "
                        + $"{new WantedSize(run.Id, fits.Value.Range.Most)}")
                : $"make {new WantedSize(run.Id, fits.Value.Range.Least)} or thicker",
            run.Id, end.Id, end.Gear.Id);

}
