using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Rules;

namespace WireSketch.Papers.Reports;

/// <summary>Volts and amps in every state.</summary>
internal static class OperatingChapters
{
    private static readonly ImmutableArray<string> Ids = ["full-output", "music", "idle", "engine-off", "standby"];

    public static IEnumerable<Chapter> Of(Install install) => install.Answers.States.Select(s => Of(install, s));

    private static Chapter Of(Install install, StateAnswer state)
    {
        var word = States.Words[(int)state.State];
        return new(
            $"state-{Ids[(int)state.State]}", $"Volts and amps: {word}",
            [
                "Nodal analysis of the whole supply network: at every terminal the currents sum to zero (Kirchhoff), each conductor carries (U1 − U2)/R, sources give (U0 − U)/Ri up to their limit, loads take what the chapter on demand says; Newton's method until nothing changes.",
                "Drop: volts of the source − volts at the device, supply and return apart; as a share of the source's volts in that state.",
                state.IsSolved ? "Solved." : "There is no operating point: a load asks for more than can be brought to it. The values are those at the most that can be.",
            ],
            [.. Sources(install, state), .. state.Loads.Select(Load), .. state.Starved.Select(Starved)]);
    }

    private static IEnumerable<Calculation> Sources(Install install, StateAnswer state) => state.Sources.Select(s => new Calculation(
        s.Id, SourceInputs(install, s.Id),
        [Result.Of("U", s.Volts), Result.Of("I given", s.Amps), .. s.AtItsLimit ? ImmutableArray.Create(Result.Said("limit", "gives all it can")) : []]));

    private static ImmutableArray<Input> SourceInputs(Install install, string id)
    {
        var (spec, wiring) = (install.Spec, install.Wiring);
        return wiring.GearById.GetValueOrDefault(id) switch
        {
            Battery b =>
            [
                Input.Of(spec, "rest volts", b.Rest ?? (b.Chemistry?.Value is null or "flooded" ? spec.Job.Vehicle.Rest : null), Defaults.Rest(wiring, b), "12.6 V; AGM and gel 12.8 V; lithium 13.2 V (common practice)"),
                Input.Of(spec, "Ri", b.Internal, Defaults.Internal(b), "8 mohm for 60 Ah, in inverse proportion to the capacity (common practice)"),
            ],
            Alternator a =>
            [
                Input.Of(spec, "regulated volts", a.Regulated ?? spec.Job.Vehicle.Running, Defaults.Running(wiring), "14.2 V (common practice)"),
                Input.Of(spec, "output", a.Output ?? spec.Job.Vehicle.Alternator, new Amps(0), "unknown"),
            ],
            GeneralSource g =>
            [
                Input.Of(spec, "regulated volts", g.Voltage, new Volts(14.2), "14.2 V"),
                Input.Of(spec, "current", g.Current, new Amps(0), "unknown"),
            ],
            IgnitionSource i => [Input.Of(spec, "limit", i.Limit, new Amps(0.5), "0.5 A for waking (common practice)")],
            _ => [Input.Of(spec, "running volts", spec.Job.Vehicle.Running, Defaults.Running(wiring), "14.2 V (common practice)")],
        };
    }

    private static Calculation Load(LoadAnswer load) => new(
        load.Path.Gear.Id,
        [
            new("from", load.Path.Source?.Id ?? (load.Path.IsTakenAsWired ? "the vehicle's own wiring" : "nothing"), null, null, load.Path.Source is null ? "no run says otherwise" : "the source with the fewest steps"),
            new("supply", string.Join(" ", load.Path.Supply.Select(s => s.Conductor?.Id ?? s.Link?.Id).OfType<string>()), null, null, "wiring"),
            new("return", string.Join(" ", load.Path.Return.Select(s => s.Conductor?.Id ?? s.Link?.Id).OfType<string>()), null, null, "wiring"),
        ],
        [
            Result.Of("U", load.Between), Result.Of("I", load.Amps), Result.Of("P", load.Watts), Result.Of("drop on supply", load.SupplyDrop), Result.Of("drop on return", load.ReturnDrop),
            Result.Of("drop", load.Drop),
        ]);

    private static Calculation Starved(StarvedLoad load) => new(
        load.Gear.Id, [Input.Computed("wanted", load.Wanted, "demand")],
        [Result.Of("most that can be brought", load.Most), Result.Said("limiting run", load.LimitingRun ?? "unknown")]);
}
