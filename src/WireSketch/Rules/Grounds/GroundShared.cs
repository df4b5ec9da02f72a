using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Rules.Grounds;

/// <summary>A ground taken from a vehicle circuit that minds.</summary>
internal sealed class GroundShared : Rule
{
    /// <summary>Up to this a vehicle's own ground wire bears a guest (common practice, no published source).</summary>
    private static readonly Amps Guest = new(2);

    private static readonly (string Word, string Says)[] Minding =
    [
        ("airbag", "the airbags"), ("SRS", "the airbags"), ("belt", "a seat belt"), ("ECU", "the engine's computer"), ("engine computer", "the engine's computer"),
        ("ABS", "the brakes"), ("brake", "the brakes"), ("sensor", "a sensor"), ("steering", "the steering"), ("fuel", "the fuel system"), ("tank", "the fuel system"),
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
              pillar-ground: { is: chassis point, origin: factory, surface: bare metal, place: with the belt bolt of the pillar } #! ground/shared
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

    public override IEnumerable<Finding> Check(Install install) => [.. Points(install), .. Wires(install)];

    private IEnumerable<Finding> Points(Install install) =>
        from point in install.Spec.Gear.OfType<ChassisPoint>()
        where install.Wiring.IsWired(install.Wiring.TerminalOf(point, "")!)
        let minds = Minding.FirstOrDefault(m => Says(point.Facts.Place, m.Word) || Says(point.Facts.Notes, m.Word))
        where minds.Word is not null
        select Report(
            point.Name.At, $"{point.Id} is shared with {minds.Says}, by what is written of it (\"{minds.Word}\")",
            "choose a point of your own on the body; if the words mean something else, change them or accept this with the reason", point.Id);

    private IEnumerable<Finding> Wires(Install install)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        foreach (var tap in install.Spec.Gear.OfType<TapPoint>().Where(t => t.Carries is { Value: TapContent.Ground }))
        {
            var users = state.Loads.Where(l => l.Path.Return.Any(s => s.Link is { Kind: ConnectionKind.Chassis } link && link.Gear?.Id == tap.Id)).ToArray();
            var amps = new Amps(users.Sum(l => l.Amps.Value));
            var limit = tap.Limit?.Value ?? Guest;
            if (state.IsSolved && !install.IsShorted && amps > limit)
            {
                yield return Report(
                    tap.Name.At, $"{RunText.List(users.Select(u => u.Path.Gear.Id))} put{(users.Length == 1 ? "s" : "")} {amps} into the vehicle's own ground wire {tap.Id}{(tap.Limit is null ? $", of which nobody says what it bears; {Guest} is taken" : $", which bears {tap.Limit}")}",
                    "ground it at a chassis point of its own", tap.Id, users[0].Path.Gear.Id);
            }
        }
    }

    private static bool Says(Written<string>? text, string word)
    {
        if (text is not { } t)
        {
            return false;
        }

        var at = t.Value.IndexOf(word, StringComparison.OrdinalIgnoreCase);
        return at >= 0 && (at == 0 || !char.IsLetter(t.Value[at - 1])) && (at + word.Length >= t.Value.Length || !char.IsLetter(t.Value[at + word.Length]) || t.Value[at + word.Length] == 's');
    }
}
