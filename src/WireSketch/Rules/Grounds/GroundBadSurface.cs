using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.Grounds;

/// <summary>A ground on paint, or on something that is not the body itself.</summary>
internal sealed class GroundBadSurface : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "ground/bad-surface",
        Severity.Warning,
        Title: "The ground is not on bare metal of the body",
        Why: """
            Paint, primer and zinc insulate; seat rails, brackets and bolts through carpet hang on the body by parts that move and rust.
            Scrape to bare metal, bolt the lug on, then seal it. Where the surface is not said it is an advice: look, and write it down. The
            frame of a truck is metal enough, but it needs its own strap to the body.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: painted } #! ground/bad-surface
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from point in install.Spec.Gear.OfType<ChassisPoint>()
        where install.Wiring.IsWired(install.Wiring.At(point, ChassisPoint.Bolt)) && point.Origin != Language.Origin.Factory
        let finding = Of(point)
        where finding is not null
        select finding;

    private Finding? Of(ChassisPoint point)
    {
        if (point.Surface is { Value: MountingSurface.Painted } painted)
        {
            return Report(
                painted.At,
                $"{point.Id} is painted: paint insulates",
                "scrape it to bare metal and write surface: bare metal",
                point.Id) with
            {
                Fixes = [new("write bare metal, once it is", [new(painted.At, "bare metal")])],
            };
        }

        if (point.On is { Value: MountingBase.SeatRail or MountingBase.Bracket or MountingBase.BoltThroughCarpet } on)
        {
            return Report(
                on.At,
                $"{point.Id} is on a {on.Value}, which hangs on the body by parts that move, rust or press on carpet",
                "ground to the body itself, and write on: body",
                point.Id);
        }

        return point.Surface is not { Value: MountingSurface.BareMetal }
            ? Report(
                point.Surface?.At ?? point.Name.At,
                $"nobody says what {point.Id} is like",
                "look, scrape it to bare metal, and write surface: bare metal",
                point.Surface is null ? Severity.Advice : Severity.Warning,
                point.Id)
            : point.On is { Value: MountingBase.Frame } frame
            ? Report(
                frame.At,
                $"{point.Id} is on the frame, which reaches the body and the battery by straps only",
                "see that a strap of the supply's gauge joins frame, body and battery",
                Severity.Advice,
                point.Id)
            : null;
    }
}
