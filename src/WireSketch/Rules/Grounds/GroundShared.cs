using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>A ground taken from a vehicle circuit that minds.</summary>
internal sealed class GroundShared : Rule
{
    /// <summary>Up to this a vehicle's own ground wire bears a guest (common practice, no published source).</summary>
    private static readonly Amps Guest = new(2);

    /// <summary>Parts of the vehicle that a ground must not share, as <c>on</c> names them, and what they belong to.</summary>
    private static readonly (MountingBase On, string Says)[] Minding =
    [
        (MountingBase.AirbagPart, "the airbags"),
        (MountingBase.BeltAnchor, "a seat belt"),
        (MountingBase.SeatBolt, "a seat"),
        (MountingBase.BrakePart, "the brakes"),
        (MountingBase.FuelPart, "the fuel system"),
    ];

    public override RuleCard Card { get; } = new(
        Id: "ground/shared",
        Severity.Warning,
        Title: "A ground is shared with a vehicle circuit that minds",
        Why: """
            Controllers measure against their ground: amperes of ours in it look to them like faults, and the bolts of belts and airbags are
            not to be touched at all. A vehicle's own ground wire is as thin as its own load needs. Choose a point of your own on the body.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 150 W }
              pillar-ground: { is: chassis point, origin: factory, surface: bare metal,
                  on: belt anchor, place: with the belt bolt of the pillar } #! ground/shared
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 25 A, at: 8 in } }
              G1: { from: inverter.-, to: pillar-ground, wire: 10 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 150 W }
              floor-ground: { is: chassis point, surface: bare metal, place: new bolt through the floor pan }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 25 A, at: 8 in } }
              G1: { from: inverter.-, to: floor-ground, wire: 10 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) => [.. Points(install), .. Wires(install)];

    private IEnumerable<Finding> Points(InstalledSystem install) =>
        from point in install.Spec.Gear.OfType<ChassisPoint>()
        where install.Wiring.IsWired(install.Wiring.At(point, ChassisPoint.Bolt))
        let minds = Minding.FirstOrDefault(m => m.On == point.On?.Value)
        where minds.Says is not null
        select Report(
            point.On!.Value.At, $"{point.Id} is on a {MountingBases.Words[minds.On]}: it is shared with {minds.Says}",
            "choose a point of your own on the body, and write on: body", point.Id);

    private IEnumerable<Finding> Wires(InstalledSystem install)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        foreach (var tap in install.Spec.Gear.Where(IsVehicleGround))
        {
            var users = state.Loads.Where(l =>
                l.Path.Return.Any(s => s.Link is { Kind: ConnectionKind.Chassis } link && link.Gear?.Id == tap.Id))
                .ToArray();
            var amps = new Amps(users.Sum(l => l.Amps.Value));
            var bears = tap.Listing.Connection?.Limit;
            var limit = bears?.Value ?? Guest;
            if (state.IsSolved && !install.IsShorted && amps > limit)
            {
                yield return Report(
                    tap.Name.At,
                    $"{RunText.List(users.Select(u => u.Path.Gear.Id))} put{(users.Length == 1 ? "s" : "")} {amps:measured} into the "
                        + $"vehicle's own ground wire "
                        + $"{tap.Id}{(bears is null ? FindingText.Of($", of which nobody says what it bears; {Guest:limit} is "
                            + $"taken") : $", which bears {bears:limit}")}",
                    "ground it at a chassis point of its own", tap.Id, users[0].Path.Gear.Id);
            }
        }
    }

    /// <summary>A ground of the vehicle's own wiring.</summary>
    private static bool IsVehicleGround(Gear gear) =>
        TerminalRoles.IsVehicleCircuit(gear) && gear.Joins.Any(j => j is TerminalJoin { Kind: ConnectionKind.Chassis });
}
