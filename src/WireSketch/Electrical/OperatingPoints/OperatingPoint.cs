using System.Collections.Immutable;
using WireSketch.Electrical.Conductors;
using WireSketch.Electrical.Energy;
using WireSketch.Electrical.Solver;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>The operating point of one state, conductors as warm as their current makes them.</summary>
internal sealed class OperatingPoint(Wiring wiring, ConductorProperties facts, Func<LoadPath, SystemState, LoadModel> drawOf)
{
    private const int MostRounds = 8;

    /// <summary>Kelvins that do not matter any more, even where somebody multiplies current and resistance with a calculator.</summary>
    private const double Settled = 0.001;

    private readonly ImmutableArray<Celsius> ambient = [.. wiring.Conductors.Select(facts.AmbientOf)];

    public StateResult Solve(SystemState state)
    {
        // Relays begin fallen off and pull in one after the other, as they do; one that would buzz is left as the last round has it.
        var driven = Relays.Driven(wiring);
        ImmutableArray<ContactCoil> pulledIn = [];
        for (var round = 0; ; round++)
        {
            var solved = Solve(state, pulledIn);
            ImmutableArray<ContactCoil> now = [.. driven.Where(r => Relays.IsPulledIn(r, t => solved.Volts[t.Index]?.Value))];
            if (round > driven.Length || now.SequenceEqual(pulledIn))
            {
                return solved;
            }

            pulledIn = now;
        }
    }

    private StateResult Solve(SystemState state, ImmutableArray<ContactCoil> pulledIn)
    {
        var temperatures = ambient;
        for (var round = 1; ; round++)
        {
            var supply = new SupplyCircuit(wiring, state, temperatures, pulledIn);
            supply.AddLoads(drawOf);
            var answer = DcSolver.Solve(supply.Circuit);
            var warmer = Warm(supply, answer);
            var change = temperatures.Zip(warmer, (a, b) => Math.Abs(a.Value - b.Value)).DefaultIfEmpty(0).Max();
            if (answer is DcSolution.Starved || change < Settled || round == MostRounds)
            {
                return Tell(state, supply, answer, temperatures);
            }

            temperatures = warmer;
        }
    }

    private ImmutableArray<Celsius> Warm(SupplyCircuit supply, DcSolution answer) =>
        [.. wiring.Conductors.Select(c => supply.ConductorBranch[c.Index] is >= 0 and var branch
            ? facts.Heated(c, new(answer.Amps[branch])) : ambient[c.Index])];

    private StateResult Tell(SystemState state, SupplyCircuit supply, DcSolution answer, ImmutableArray<Celsius> temperatures)
    {
        Amps Through(int branch) => new(branch < 0 ? 0 : answer.Amps[branch]);
        var ways = new CurrentPath(wiring, supply, answer);
        var loads = supply.Loads.Select(l => TellLoad(supply, l.Path, l.Branch, l.Draw, answer, state, ways)).ToImmutableArray();
        var sources = supply.Sources.Select(s => new SourceResult(
            s.Id, -Through(s.Branch), new(answer.Volts[s.Plus] - answer.Volts[s.Minus]), -answer.Amps[s.Branch] >= s.Limit * (1 - 1e-9)))
            .ToImmutableArray();
        return new(
            state,
            answer is DcSolution.Found,
            [.. wiring.Terminals.Select(t => answer.Floats[t.Index] ? (Volts?)null : new Volts(answer.Volts[t.Index]))],
            [.. supply.ConductorBranch.Select(Through)], [.. supply.LinkBranch.Select(Through)],
            [.. supply.ConductorBranch.Select(b => b < 0 ? (Ohms?)null : new Ohms(supply.Circuit.Branches[b].Ohms))],
            temperatures,
            loads,
            sources,
            answer is DcSolution.Starved starved ? Blame(supply, starved) : []);
    }

    private LoadResult TellLoad(
        SupplyCircuit supply, LoadPath path, int branch, LoadModel draw, DcSolution answer, SystemState state, CurrentPath ways)
    {
        if (branch < 0)
        {
            var nominal = Defaults.EngineRuns(state) ? Defaults.Running(wiring) : Defaults.Rest(wiring);
            var amps = new Amps(draw.Kind switch
            {
                LoadModelKind.Power => draw.Size / nominal.Value,
                LoadModelKind.Current => draw.Size,
                _ => nominal.Value / draw.Size,
            });
            return new(path, nominal, amps, nominal * amps, new(0), new(0), new(0));
        }

        double V(Terminal t) => answer.Volts[t.Index];
        var between = new Volts(V(path.Plus) - V(path.Minus));
        var current = new Amps(answer.Amps[branch]);
        var isOff = path.Supply.Concat(path.Return).Any(s => s.Link is { } link && supply.LinkBranch[link.Index] < 0);
        if (path.Source is not { } source || isOff)
        {
            return new(path, between, current, between * current, new(0), new(0), new(0));
        }

        var way = current.Value > 0 ? ways.Of(path) : path;
        source = way.Source!;
        var negative = wiring.ReturnOf(source);
        var supplyDrop = new Volts(V(source) - V(path.Plus));
        var returnDrop = new Volts(V(path.Minus) - V(negative));
        var given = V(source) - V(negative);
        return new(
            way,
            between,
            current,
            between * current,
            supplyDrop,
            returnDrop,
            new(given > 0 ? (supplyDrop + returnDrop).Value / given : 0));
    }

    private static ImmutableArray<UnsuppliedLoad> Blame(SupplyCircuit supply, DcSolution.Starved starved)
    {
        var blamed = ImmutableArray.CreateBuilder<UnsuppliedLoad>();
        foreach (var branch in starved.Loads)
        {
            var load = supply.Loads.First(l => l.Branch == branch);
            var wanted = new Watts(supply.Circuit.Branches[branch].Value);
            var run = load.Path.Supply.Concat(load.Path.Return).Select(s => s.Conductor).OfType<Conductor>()
                .Where(c => supply.ConductorBranch[c.Index] >= 0)
                .OrderByDescending(c => Loss(supply, starved, c)).ThenBy(c => c.Index).FirstOrDefault();
            blamed.Add(new(load.Path.Gear, wanted, wanted * starved.Scale, run?.RunId));
        }

        return blamed.ToImmutable();
    }

    private static double Loss(SupplyCircuit supply, DcSolution answer, Conductor conductor)
    {
        var branch = supply.ConductorBranch[conductor.Index];
        return answer.Amps[branch] * answer.Amps[branch] * supply.Circuit.Branches[branch].Ohms;
    }
}
