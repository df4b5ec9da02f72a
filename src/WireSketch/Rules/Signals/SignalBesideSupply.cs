using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Signals;

/// <summary>A signal cable that shares its way with supply.</summary>
internal sealed class SignalBesideSupply : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/beside-supply",
        Severity.Warning,
        Title: "Signal cable lies beside supply cable",
        Why: """
            The current in a supply cable changes with every note and every spark; over more than a short stretch it is heard in the signal
            cable beside it. Careful installers run supply down one side of the vehicle and signal down the other, and cross at right
            angles.
            """,
        new Basis.Practice(),
        Bad: """
            paths:
              left sill: { length: 8 ft }
              right sill: { length: 8 ft }
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              bolt: { is: chassis point, surface: bare metal }
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 150 W }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 8 AWG red, along: [left sill], fuse: { rating: 30 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 8 AWG black, length: 12 in }
              L1: { from: radio.front, to: amp.in, wire: line pair, along: [left sill] } #! signal/beside-supply
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            paths:
              left sill: { length: 8 ft }
              right sill: { length: 8 ft }
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              bolt: { is: chassis point, surface: bare metal }
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 150 W }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 8 AWG red, along: [left sill], fuse: { rating: 30 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 8 AWG black, length: 12 in }
              L1: { from: radio.front, to: amp.in, wire: line pair, along: [right sill] }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    private static readonly Meters Limit = Meters.FromFeet(3);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var supply = install.Wiring.Runs.Where(r => r.Kind == RunKind.Supply).SelectMany(r => r.Route.Select(a => (Path: a.Id, Run: r.Id)))
            .ToLookup(x => x.Path, x => x.Run, StringComparer.Ordinal);
        foreach (var run in install.Wiring.Runs.Where(r => r.Kind == RunKind.Line))
        {
            var shared = run.Route.Select(a => (a.At, a.Path, Beside: Beside(a.Path, supply[a.Id])))
                .Where(x => x.Beside.Length > 0)
                .ToArray();
            var length = new Meters(shared.Sum(x => x.Path.Length?.Value.Value ?? 0));
            if (length > Limit)
            {
                var beside = shared.SelectMany(x => x.Beside).Distinct(StringComparer.Ordinal).ToArray();
                var otherSide = shared[0].Path.Side switch
                {
                    { Value: VehicleSide.Left } => "right",
                    { Value: VehicleSide.Right } => "left",
                    _ => "other",
                };
                yield return Report(
                    shared[0].At,
                    $"{run.Id} lies beside {RunText.List(beside)} over {RunText.Measure(install, length):measured} along "
                        + $"{RunText.List(shared.Select(x => x.Path.Id))}; {RunText.Measure(install, Limit):limit} is the most",
                    $"run it down the {otherSide} side of the vehicle, and cross supply cables at right angles",
                    [run.Id, .. shared.Select(x => x.Path.Id), .. beside]);
            }
        }
    }

    /// <summary>Runs of the spec, and what the path itself says lies there.</summary>
    private static string[] Beside(VehiclePath path, IEnumerable<string> runs) =>
        [.. runs.Concat(path.Beside.Select(b => b.Value).Where(b => PassageWords.Supply.Contains(b))).Distinct(StringComparer.Ordinal)];
}
