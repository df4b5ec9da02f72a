using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Documents.Reports;

/// <summary>Volts and amps in every state.</summary>
internal static class OperatingChapters
{
    private const string Solved = "the network solved";

    private static readonly ImmutableArray<string> Ids = ["full-output", "music", "idle", "engine-off", "standby"];

    private static readonly ImmutableArray<string> Meanings =
    [
        "a test tone at full output, engine running at speed",
        "music, engine running at speed",
        "music, engine idling",
        "music, engine stopped",
        "everything asleep",
    ];

    public static IEnumerable<Chapter> Of(InstalledSystem install) =>
        install.Answers.States.Select(s => Of(install, s)).Append(Volts(install));

    private static Chapter Of(InstalledSystem install, StateResult state)
    {
        var i = SystemStates.All.IndexOf(state.State);
        var drops = new StepDrops(install, state);
        return new(
            $"state-{Ids[i]}", $"Volts and amps: {SystemStates.WordOf(state.State)}",
            [
                $"State: {Meanings[i]}.",
                "The whole supply network is solved at once (nodal analysis): at every terminal the currents sum to zero (Kirchhoff), "
                    + "loads take what the chapter on demand says. What each conductor and fuse loses is its current times its "
                    + "resistance; a device gets the volts of its source less what is lost on its way there and back.",
                .. EngineRuns(state) && install.Wiring.Starter is not null
                    ? [
                        $"The vehicle itself takes {Quantity.Print(Defaults.BaseLoad(install.Wiring))} at the first battery "
                            + $"({(install.Spec.Job.Vehicle.BaseLoad is { } b ? ReportBuilder.Place(b.At) : $"default: "
                                + $"{Assume.BaseLoad.Words}, {Assume.BaseLoad.Basis}")})."
                    ]
                    : Array.Empty<string>(),
                state.IsSolved
                    ? "Every load can be supplied."
                    : "There is no operating point: a load asks for more than can be brought to it. The values are those at the most "
                        + "that can be.",
            ],
            [ConductorChapters.Termination(install)],
            [
                .. Sources(install, state),
                .. install.Wiring.Conductors.Where(c => Flows(state, c)).Select(c => drops.Of(c)),
                .. install.Wiring.Links.Where(l => Flows(state, l)).Select(drops.Of),
                .. state.Loads.Select(l => Load(install, state, l, drops)), .. state.Starved.Select(Starved),
            ]);
    }

    /// <summary>Volts of every wired terminal of the supply against the body, states side by side.</summary>
    private static Chapter Volts(InstalledSystem install)
    {
        var inside = install.Wiring.Conductors.Where(c => install.Answers.States.Any(s => s.Resistances[c.Index] is not null))
            .SelectMany(c => new[] { c.From, c.To })
            .Where(t => t != install.Wiring.Body).DistinctBy(t => t.Index).OrderBy(t => t.Index);
        return new(
            "volts",
            "Volts of the terminals against the body",
            ["As the networks of the five states were solved; \"floats\" where nothing holds a terminal at any voltage in that state."],
            [],
            [
                .. inside.Select(t => install.Answers.States.Aggregate(new ReportBuilder(), (w, s) => s.Volts[t.Index] is { } v
                    ? w.Solved<Volts>("", SystemStates.WordOf(s.State), v, Solved, ReportBuilder.FineDigits)
                    : w.Says(SystemStates.WordOf(s.State), "floats", Solved)).Of(t.Id)),
            ]);
    }

    private static bool EngineRuns(StateResult state) => Defaults.EngineRuns(state.State);

    private static bool Flows(StateResult state, Conductor c) =>
        state.Resistances[c.Index] is not null && Math.Abs(state.Amps[c.Index].Value) > 1e-6;

    private static bool Flows(StateResult state, InternalConnection l) =>
        l.Kind is not ConnectionKind.Joint && Math.Abs(state.LinkAmps[l.Index].Value) > 1e-6;

    private static IEnumerable<Calculation> Sources(InstalledSystem install, StateResult state)
    {
        var (spec, wiring) = (install.Spec, install.Wiring);
        foreach (var s in state.Sources)
        {
            var w = new ReportBuilder();
            w.Taken("I", "current given", s.Amps, Solved, ReportBuilder.FineDigits);
            switch (wiring.Sources.FirstOrDefault(x => x.HasPoles && x.Id == s.Id)?.Source)
            {
                case BatterySource b:
                    w.Given(
                        "U0",
                        "volts at rest",
                        b.Rest ?? (b.Chemistry?.Value is null or Chemistry.Flooded ? spec.Job.Vehicle.Rest : null),
                        Defaults.Rest(wiring, b),
                        $"{Assume.Resting.Words}; AGM and gel {Assume.RestingAgm.Words}; lithium {Assume.RestingLithium}");
                    if (s.Amps.Value >= 0)
                    {
                        w.Given("R_i", "internal resistance", b.Internal, Defaults.Internal(b), Assume.Internal.ToString())
                            .Gives("U", "volts between its terminals", s.Volts, "U0 − I·R_i", ReportBuilder.FineDigits);
                    }
                    else
                    {
                        w.Taken(
                            "R_c",
                            "while it is charged",
                            Defaults.Charging(b),
                            $"default: {Assume.ChargePerVolt}, and no less than its internal resistance")
                            .Gives("U", "volts between its terminals", s.Volts, "U0 − I·R_c", ReportBuilder.FineDigits);
                    }

                    break;
                case AlternatorSource a:
                    Regulated(w, s, a.Regulated ?? spec.Job.Vehicle.Running, Defaults.Regulated(wiring, a));
                    break;
                case ChargerSource g:
                    Regulated(w, s, g.Voltage, Assume.Running.Value);
                    break;
                default:
                    Regulated(w, s, spec.Job.Vehicle.Running, Defaults.Running(wiring));
                    break;
            }

            yield return w.Of(s.Id);
        }
    }

    private static void Regulated(ReportBuilder w, SourceResult s, Written<Volts>? written, Volts otherwise)
    {
        w.Given("U_reg", "regulated volts", written, otherwise, Assume.Running.ToString());
        if (s.AtItsLimit)
        {
            w.Solved<Volts>(
                "U",
                "volts between its terminals",
                s.Volts,
                "it gives all that it can, so its volts fall to what the network asks for",
                ReportBuilder.FineDigits);
        }
        else if (s.Amps.Value <= 0)
        {
            w.Solved<Volts>(
                "U",
                "volts between its terminals",
                s.Volts,
                "others hold it above what it regulates to, so it gives nothing",
                ReportBuilder.FineDigits);
        }
        else
        {
            w.Assumed("R_reg", "droop of its regulator", Assume.Regulator)
                .Gives("U", "volts between its terminals", s.Volts, "U_reg − I·R_reg", ReportBuilder.FineDigits);
        }
    }

    private static Calculation Load(InstalledSystem install, StateResult state, LoadResult load, StepDrops drops)
    {
        var path = load.Path;
        var w = new ReportBuilder();
        if (path.IsTakenAsWired || path.Source is not { } source)
        {
            return w.Told(
                "fed",
                path.IsTakenAsWired ? "by the vehicle's own wiring" : "by nothing",
                path.IsTakenAsWired ? "no run says otherwise" : "the wiring")
                .Solved<Volts>(
                    "U",
                    "volts it gets",
                    load.Between,
                    path.IsTakenAsWired ? "those of the vehicle at rest or running, nothing lost" : Solved,
                    ReportBuilder.FineDigits)
                .Solved<Amps>("I", "current", load.Amps, path.IsTakenAsWired ? "chapter What the devices take, at those volts" : Solved)
                .Of(path.Gear.Id);
        }

        var (supply, back) = (drops.Along(path.Supply), drops.Return(path, source));
        var limit = CriticalLoads.DropLimit(install.Spec.Settings, path.Gear);
        var given = install.Wiring.ReturnOf(source);
        if (state.Volts[source.Index] is not { } plus
            || state.Volts[given.Index] is not { } minus
            || state.Volts[path.Plus.Index] is null
            || state.Volts[path.Minus.Index] is null
            || load.SupplyDrop.Value == 0)
        {
            return w.Told("fed from", source.Id, "the source that gives most of its current")
                .Solved<Volts>("U", "volts it gets", load.Between, Solved, ReportBuilder.FineDigits)
                .Solved<Amps>("I", "current", load.Amps, "nothing is lost on its way, or the way is open in this state").Of(path.Gear.Id);
        }

        w.Told("fed from", source.Id, "the source that gives most of its current")
            .Taken("U_s", "volts of its source", plus - minus, "this chapter", ReportBuilder.FineDigits)
            .Each("d_s", "lost on the way there", supply, "this chapter, step by step")
            .Each("d_r", "lost on the way back", back, "this chapter, step by step")
            .Taken("I", "current", load.Amps, Solved)
            .Gives("ΔU_s", "lost in the supply", load.SupplyDrop, "sum(d_s)")
            .Gives("ΔU_r", "lost in the return", load.ReturnDrop, "sum(d_r)")
            .Gives("U", "volts it gets", load.Between, "U_s − ΔU_s − ΔU_r", ReportBuilder.FineDigits)
            .Gives("P", "power it takes", load.Watts, "U·I")
            .Gives("d", "lost in all", load.Drop, "(ΔU_s + ΔU_r)/U_s");
        var words = $"{limit} at full output ({LimitOrigin(install, path.Input)})";
        return w.Says(
            "limit",
            state.State == SystemState.FullOutput ? $"{words}: {(load.Drop <= limit ? "kept" : "broken")}" : words,
            "rule supply/drop")
            .Of(path.Gear.Id);
    }

    private static string LimitOrigin(InstalledSystem install, PowerInput input)
    {
        var settings = install.Spec.Settings;
        var critical = input.IsCritical;
        return (critical ? settings.DropCritical : settings.DropOther) is { } written ? ReportBuilder.Place(written.At)
            : critical ? "default for critical loads"
            : "default for other loads";
    }

    private static Calculation Starved(UnsuppliedLoad load) =>
        new ReportBuilder().Taken("P_w", "wanted", load.Wanted, "chapter What the devices take")
            .Solved<Watts>("P_m", "the most that can be brought", load.Most, "all loads reduced alike until the network can be solved")
            .Says("limiting run", load.LimitingRun ?? "unknown", "the highest loss on its way").Of($"{load.Gear.Id}, not supplied");
}
