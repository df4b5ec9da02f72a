using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Conductors;

/// <summary>Too many volts are lost between source and load.</summary>
internal sealed class SupplyDrop : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/drop",
        Severity.Warning,
        Title: "Too many volts are lost on the way to the load",
        Why: """
            What is lost in the cable is missing at the amplifier: less power, more distortion, lights that dim with the bass. Supply and
            return count together. Amplifiers, head units, processors and what is marked critical may lose 3 %, everything else 10 %;
            settings: { drop: … } changes both.
            """,
        new Basis.Published(
            $"46 CFR 183.340(p): not above 10 % at the load, for small passenger vessels; the 3 % for critical loads is common practice, "
                + $"no published source"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              charger: { is: general load, current: 10 A, behaves: current, critical: true }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: charger.+, wire: 14 AWG red, length: 20 ft, fuse: { rating: 15 A, at: 8 in } } #! supply/drop
              G1: { from: charger.-, to: bolt, wire: 14 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              charger: { is: general load, current: 10 A, behaves: current, critical: true }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: charger.+, wire: 8 AWG red, length: 20 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: charger.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """);

    /// <summary>One finding for a run: the one that loses most on the way of the loads concerned.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        if (!state.IsSolved || install.IsShorted)
        {
            return [];
        }

        var losses = new RunLosses(install.Wiring, state);
        return from load in state.Loads
               where load.Path is { HasReturn: true, Source: not null, IsTakenAsWired: false } && load.Drop > DropLimits.LimitOf(install, load.Path.Gear) && !IsBelowLowest(load)
               let worst = losses.Worst(load.Path)
               where worst.Run is not null
               group (load, worst.Loss) by worst.Run into ofRun
               select Of(
                   install,
                   install.Wiring.RunsById[ofRun.Key],
                   [.. ofRun.OrderByDescending(x => x.load.Drop / DropLimits.LimitOf(install, x.load.Path.Gear))]);
    }

    private static bool IsBelowLowest(LoadResult load) =>
        load.Path.Input.Takes is ApplianceDraw { Lowest: { } lowest } && load.Between < lowest.Value;

    private Finding Of(InstalledSystem install, WiredRun run, ImmutableArray<(LoadResult Load, Volts Loss)> loads)
    {
        var (worst, loss) = loads[0];
        var limit = DropLimits.LimitOf(install, worst.Path.Gear);
        var lost = worst.SupplyDrop.Value + worst.ReturnDrop.Value;
        var source = lost / worst.Drop.Value;
        var others = loads.Length > 1
            ? FindingText.Of(
                $"; {FindingText.List(loads.Skip(1).Select(l => FindingText.Of($"{l.Load.Path.Gear.Id} loses {l.Load.Drop}")))}")
            : FindingText.None;
        var excess = lost - (limit.Value * source);
        var size = loss.Value > excess
            ? WireSizes.AtLeast(run.Wire.Size.Area.Value * loss.Value / (loss.Value - excess), run.Wire.Size)
            : null;
        return Found(
            RunText.WireAt(run),
            $"{worst.Path.Gear.Id} gets {worst.Between} of {new Volts(source)} {RunText.InState(SystemState.FullOutput)}: "
                + $"{worst.Drop:measured} is lost ({worst.SupplyDrop} in the supply, {worst.ReturnDrop} in the return), {limit:limit} "
                + $"is the most; {RunText.Full(install, run)} alone takes {loss}{others}",
            size is { } s
                ? FindingText.Of($"make {new WantedSize(run.Id, s)}, or shorten it")
                : $"{run.Id} alone cannot mend it: make supply and return thicker, or bring the load nearer",
            run.Id, [.. loads.Select(l => l.Load.Path.Gear.Id)]) with
        {
            Fixes = size is { } thicker ? RunText.SizeFix(run, thicker) : [],
        };
    }

    private Finding Found(SourceSpan at, FindingText message, FindingText help, string first, string[] others) => Report(at, message, help, [first, .. others]);

    /// <summary>Volts that runs lose on the ways of loads.</summary>
    private sealed class RunLosses
    {
        private readonly Wiring wiring;
        private readonly double?[] ofConductor;
        private readonly int[] runOf;
        private readonly double[] ofRun;

        public RunLosses(Wiring wiring, StateResult state)
        {
            this.wiring = wiring;
            var places = wiring.Runs.Select((r, i) => (r.Id, Place: i)).DistinctBy(r => r.Id).ToDictionary(r => r.Id, r => r.Place, StringComparer.Ordinal);
            ofConductor = [.. wiring.Conductors.Select(c => state.Volts[c.From.Index] is { } a && state.Volts[c.To.Index] is { } b ? Math.Abs(a.Value - b.Value) : (double?)null)];
            runOf = [.. wiring.Conductors.Select(c => places[c.RunId])];
            ofRun = new double[wiring.Runs.Length];
        }

        /// <summary>The run on a load's way that loses most volts, and how many; of like ones the first.</summary>
        public (string? Run, Volts Loss) Worst(LoadPath path)
        {
            Array.Clear(ofRun);
            foreach (var step in path.Supply)
            {
                Add(step);
            }

            foreach (var step in path.Return)
            {
                Add(step);
            }

            var worst = -1;
            foreach (var step in path.Supply.Concat(path.Return))
            {
                if (step.Conductor is { } conductor && ofConductor[conductor.Index] is not null && (worst < 0 || ofRun[runOf[conductor.Index]] > ofRun[worst]))
                {
                    worst = runOf[conductor.Index];
                }
            }

            return worst < 0 ? (null, new(0)) : (wiring.Runs[worst].Id, new(ofRun[worst]));
        }

        private void Add(PathStep step)
        {
            if (step.Conductor is { } conductor && ofConductor[conductor.Index] is { } loss)
            {
                ofRun[runOf[conductor.Index]] += loss;
            }
        }
    }
}
