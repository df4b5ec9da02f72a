using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Supply.Conductors;

/// <summary>A load that cannot be supplied, or gets less than it needs to run.</summary>
internal sealed class SupplyInsufficient : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/insufficient",
        Severity.Error,
        Title: "A load cannot be supplied",
        Why: """
            A device that takes constant power draws more current the lower its voltage. Where the cable is too long and thin there is no
            balance: the voltage falls until the device shuts down or its fuse opens. Below its lowest voltage a device stops as well.
            """,
        new Basis.Reasoning("no operating point: the wiring can bring at most E²/4R to a load of constant power"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 120 W, lowest: 11.5 V }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 14 AWG red, length: 50 ft, #! supply/insufficient
                  fuse: { rating: 20 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 14 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 120 W, lowest: 11.5 V }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 6 AWG red, length: 20 ft, fuse: { rating: 20 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 6 AWG black, length: 12 in }
            """);

    /// <summary>
    /// One finding for a limiting run, and one for a device below its lowest voltage: in the first state in which it happens.
    /// </summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var state in install.Answers.States)
        {
            if (state.State == SystemState.Standby || install.IsShorted)
            {
                continue;
            }

            var reversed = install.Wiring.Loads.Where(l => ReversedSupplies.Is(install, l))
                .Select(l => l.Gear.Id)
                .ToHashSet(StringComparer.Ordinal);
            foreach (var group in state.IsSolved ? [] : state.Starved.Where(s => !reversed.Contains(s.Gear.Id)).GroupBy(s => s.LimitingRun))
            {
                if (group.All(s => told.Add(s.Gear.Id)))
                {
                    yield return CannotBe(install, state, group.Key, [.. group]);
                }
            }

            if (!state.IsSolved && state.Starved.IsEmpty && told.Add("") && install.Starter is { } battery)
            {
                yield return Report(
                    battery.Name.At,
                    $"no operating point was found for {new StatePhrase(Words(state.State), Words(state.State))}: what rests on its "
                        + $"volts and amps is not checked",
                    "look for batteries joined at unlike voltages, or for values far from any real part", battery.Id);
            }

            foreach (var load in state.IsSolved ? state.Loads : [])
            {
                if (load.Path is { Input.Takes: ApplianceDraw { Lowest: { } lowest }, HasReturn: true, Source: not null }
                    && load.Between < lowest.Value
                    && told.Add(load.Path.Gear.Id))
                {
                    yield return TooLow(install, state, load, lowest);
                }
            }
        }
    }

    private Finding CannotBe(InstalledSystem install, StateResult state, string? run, UnsuppliedLoad[] loads)
    {
        var wired = run is null ? null : install.Wiring.RunsById.GetValueOrDefault(run);
        var wants = FindingText.List(loads.Select(l =>
            FindingText.Of($"{l.Gear.Id} wants {l.Wanted:measured} and can get {l.Most:limit}")));
        return Report(
            wired is null ? loads[0].Gear.Name.At : RunText.WireAt(wired),
            $"{wants} {RunText.InState(state.State)}: the supply cannot bring "
                + $"more{(wired is null ? FindingText.None : FindingText.Of($", most is lost in {RunText.Full(install, wired)}"))}",
            wired is null ? "shorten or thicken its supply and return" : $"make {wired.Id} thicker or shorter",
            null, [.. loads.Select(l => l.Gear.Id), .. wired is null ? Array.Empty<string>() : [wired.Id]]) with
        {
            Fixes = wired is not null && WireSizes.Next(wired.Wire.Size) is { } next ? RunText.SizeFix(wired, next) : [],
        };
    }

    private Finding TooLow(InstalledSystem install, StateResult state, LoadResult load, Written<Volts> lowest)
    {
        var first = load.Path.Supply.Select(s => s.Conductor)
            .OfType<Topology.Conductor>()
            .OrderByDescending(c => install.Answers.Conductors[c.Index].Resistance.Value)
            .FirstOrDefault();
        var run = first is null ? null : RunText.Of(install, first);
        return Report(
            run is null ? load.Path.Gear.Name.At : RunText.WireAt(run),
            $"{load.Path.Gear.Id} gets {load.Between:measured 4} {RunText.InState(state.State)} and stops below {lowest:limit}; "
                + $"{new Volts(load.SupplyDrop.Value + load.ReturnDrop.Value)} is lost on the way",
            run is null ? "shorten or thicken its supply and return" : $"make {run.Id} thicker or shorter",
            null, [load.Path.Gear.Id, .. run is null ? Array.Empty<string>() : [run.Id]]) with
        {
            Fixes = run is not null && WireSizes.Next(run.Wire.Size) is { } next ? RunText.SizeFix(run, next) : [],
        };
    }

    private static string Words(SystemState state) => SystemStates.WordOf(state);
}
