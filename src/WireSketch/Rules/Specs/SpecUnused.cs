using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Specs;

/// <summary>A part, wire type or path that nothing names.</summary>
internal sealed class SpecUnused : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "spec/unused",
        Severity.Advice,
        Title: "Something is described and never used",
        Why: """
            What nobody uses misleads the next reader: perhaps the name was changed in one place and not in the other. Take it out, or name
            it where it belongs.
            """,
        new Basis.Reasoning("names that are declared in this file and used nowhere in it"),
        Bad: """
            parts:
              small-lamp: { is: lamp, power: 10 W } #! spec/unused
            wires:
              thin: { size: 18 AWG, color: red } #! spec/unused
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """,
        Good: """
            wires:
              red-14: { size: 14 AWG, color: red }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: red-14, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var spec = install.Spec;
        var parts = spec.Gear.Select(g => g.Facts.Part?.Value).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var wires = spec.Runs.Select(r => r.Wire?.TypeId).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var paths = install.Wiring.Runs.SelectMany(r => r.Route).Select(r => r.Id).ToHashSet(StringComparer.Ordinal);

        // Where ways are sought, paths that none of them takes are the choice that was offered.
        var sought = install.Wiring.Runs.Any(r => r.Run.Along.IsEmpty && !r.Route.IsEmpty);
        return [
            .. spec.Parts.Where(p => ReferenceEquals(p.At.File, spec.File) && !parts.Contains(p.Value) && !IsBelowAnother(spec, p.Value))
                .Select(p => Of(p, "part", "no gear says part: ")),
            .. spec.Wires.Where(w => ReferenceEquals(w.Name.At.File, spec.File) && !wires.Contains(w.Id))
                .Select(w => Of(w.Name, "wire type", "no run says wire: ")),
            .. spec.Paths.Where(p => !paths.Contains(p.Id) && !(sought && p is { From: not null, To: not null, Length: not null }))
                .Select(p => Of(p.Name, "path", "no run goes along: ")),
        ];
    }

    /// <summary>A part may build on another, which leaves no trace in the gear.</summary>
    private static bool IsBelowAnother(Spec spec, string part) => spec.File.Text.Contains("part: " + part, StringComparison.Ordinal);

    private Finding Of(Written<string> name, string what, string says) =>
        Report(name.At, $"the {what} {name.Value} is never used: {says}{name.Value}", "take it out, or use it", name.Value);
}
