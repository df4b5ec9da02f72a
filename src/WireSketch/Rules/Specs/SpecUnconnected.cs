using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Specs;

/// <summary>A device that nothing is wired to.</summary>
internal sealed class SpecUnconnected : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "spec/unconnected",
        Severity.Warning,
        Title: "A device has no run",
        Why: """
            A device without a wire is bought and fitted and does nothing: a run was forgotten, or goes to another name. What is only to be
            bought and has no terminals to wire belongs under notes.
            """,
        new Basis.Reasoning("every new device needs a run at one of its terminals"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
              spare-bolt: { is: chassis point, surface: bare metal } #! spec/unconnected
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var used = install.Wiring.Terminals.Where(install.Wiring.IsWired)
            .Select(t => t.Gear?.Id)
            .OfType<string>()
            .ToHashSet(StringComparer.Ordinal);
        return from gear in install.Spec.Gear
               where !used.Contains(gear.Id)
                   && !gear.InVehicle
                   && gear.Facts.Quantity > 0
                   && !gear.Drawing.PlugsIn
                   && !gear.Joins.Any(j => j is AcrossJoin or TerminalJoin { When: JoinCondition.FirstIsUnwired })
               select Report(
                   gear.Name.At,
                   $"no run goes to {gear.Id}",
                   $"add its runs, or take it out; its terminals are "
                       + $"{RunText.List(gear.Terminals.Select(t => t.Name.Length == 0 ? gear.Id : $"{gear.Id}.{t.Name}"))}",
                   gear.Id);
    }
}
