using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>The vehicle's own lead between battery and body has to carry what is added.</summary>
internal sealed class GroundFactoryLead : Rule
{
    /// <summary>Below this the factory lead is not in question (common practice, no published source).</summary>
    private static readonly Amps Little = new(20);

    public override RuleCard Card { get; } = new(
        Id: "ground/factory-lead",
        Severity.Advice,
        Title: "The lead at the battery's minus may be too thin for what is added",
        Why: """
            Whatever comes in by a thick new cable goes back to the battery through the factory lead from body to minus, with the engine off
            all of it. Put a lead of the supply's gauge beside it. Unless a run describes the lead, 1 mohm is taken for it.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah } #! ground/factory-lead
              inverter: { is: inverter, power: 500 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 1/0 AWG red, length: 8 ft, fuse: { rating: 80 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 1/0 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              strut: { is: chassis point, surface: bare metal }
              inverter: { is: inverter, power: 500 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 1/0 AWG red, length: 8 ft, fuse: { rating: 80 A, at: 8 in } }
              G0: { from: battery.-, to: strut, wire: 1/0 AWG black, length: 14 in }
              G1: { from: inverter.-, to: bolt, wire: 1/0 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var wiring = install.Wiring;
        if (install.IsShorted || install.Wiring.Starter is not { Gear: var battery, Minus: { } minus })
        {
            yield break;
        }

        var amps = Demand(install);
        if (wiring.LinksAt[minus.Index].Any(l => l.Kind == ConnectionKind.FactoryLead) && amps > Little)
        {
            yield return Report(
                battery.Name.At,
                $"up to {amps:measured} come back by the body, and nothing describes the lead at {minus}; {new Ohms(0.001)} is taken "
                    + $"for it",
                $"look at it; put a lead as thick as the supply beside it and write it as a run, such as {Lead(install, battery, minus)}",
                battery.Id, minus.Id);
            yield break;
        }

        var leads = wiring.ConductorsAt[minus.Index].Where(c => TerminalRoles.IsBodyBolt(c.Other(minus).Gear)).ToArray();
        var carries = leads.Select(c => install.Answers.Conductors[c.Index].Ampacity).ToArray();
        if (leads.Length > 0
            && Array.TrueForAll(carries, a => a is not null)
            && new Amps(carries.Sum(a => a!.Value.Value)) is var most
            && amps > most)
        {
            var run = RunText.Of(install, leads[0]);
            yield return Report(
                RunText.WireAt(run),
                $"up to {amps:measured} come back by {RunText.List(leads.Select(l => l.RunId).Distinct(StringComparer.Ordinal))}, which "
                    + $"carr{(leads.Length == 1 ? "ies" : "y")} {most:limit}",
                $"make {run.Id} thicker, or put a second lead beside it", Severity.Warning, run.Id, battery.Id);
        }
    }

    /// <summary>The run to add: to a chassis point that stands beside the battery, else to one that must be added as well.</summary>
    private static string Lead(InstalledSystem install, Gear battery, Terminal minus)
    {
        var id = Enumerable.Range(0, 1000)
            .Select(i => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"G{i}"))
            .First(g => !install.Wiring.RunsById.ContainsKey(g));
        var thickest = install.Wiring.Runs.Where(r => r.Kind == RunKind.Supply && !r.Wire.IsLinePair)
            .MaxBy(r => r.Wire.Size)?.Wire.SizeWords
            ?? "1/0 AWG";
        var beside = install.Spec.Gear.FirstOrDefault(g =>
            battery.Zone is not null && g.Zone == battery.Zone && TerminalRoles.IsBodyBolt(g));
        var run = $"{id}: {{ from: {minus}, to: {beside?.Id ?? "strut"}, wire: {thickest} black, length: "
            + $"{(install.Wiring.Runs.Any(r => r.Wire.Size.Awg is not null) ? "14 in" : "35 cm")} }}";
        return beside is not null
            ? run
            : $"{run}, with a chassis point to land on under gear: strut: {{ is: chassis "
                + $"point{(battery.Zone is { } z ? $", zone: {z}" : "")}, surface: bare metal }}";
    }

    /// <summary>What the loads take at full output whose current goes back by the body and that are not fed by another battery.</summary>
    private static Amps Demand(InstalledSystem install)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        return new(state.Loads.Where(l =>
            !l.Path.IsTakenAsWired
                && l.Path.Return.Any(s => s.Link is { Kind: ConnectionKind.Chassis })
                && (!TerminalRoles.IsBattery(l.Path.Source?.Gear) || ReferenceEquals(l.Path.Source!.Gear, install.Starter)))
            .Sum(l => l.Amps.Value));
    }
}
