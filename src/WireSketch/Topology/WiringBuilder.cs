using System.Collections.Frozen;
using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Topology;

/// <summary>Builds the wiring of a spec, step by step.</summary>
internal sealed class WiringBuilder(Spec spec, SizeChoices choices)
{
    private readonly List<Finding> findings = [];
    private readonly TerminalTable table = new(
        spec.Unread.ToImmutableHashSet(StringComparer.Ordinal),
        spec.Doubtful.ToImmutableHashSet(StringComparer.Ordinal),
        spec.Broken || IsBare(spec));

    public Outcome<Wiring> Build()
    {
        if (IsBare(spec))
        {
            findings.Add(new(
                "spec/missing",
                Severity.Error,
                "there are runs, and no gear that they could join",
                spec.Runs[0].Name.At)
            { Help = "put every device under gear:, by an id of its own" });
        }

        foreach (var device in spec.Gear)
        {
            table.Add(device);
        }

        var wirer = new ConductorBuilder(spec, choices, table, findings);
        ImmutableArray<WiredRun> runs = [.. spec.Runs.Select(wirer.Wire).OfType<WiredRun>()];
        foreach (var run in runs)
        {
            WireResolver.CheckCores(run, findings);
        }

        Measured();
        ImmutableArray<Gear> gear = [.. spec.Gear, .. wirer.Holders];
        var wired = wirer.Conductors.SelectMany(c => new[] { c.From.Index, c.To.Index }).ToHashSet();
        ImmutableArray<InternalConnection> links = [
            .. new ConnectionBuilder(table, runs, t => wired.Contains(t.Index)).Make(gear, findings)
        ];
        var nets = NetFinder.Find(table.All, wirer.Conductors, links);
        var kinds = NetFinder.Kinds(runs, nets.Of);
        ImmutableArray<Conductor> conductors = [.. wirer.Conductors.Select(c => c.Changed(c.To, kinds[c.RunId]))];
        runs = [.. runs.Select(r => r.Carrying(kinds[r.Id], [.. r.Conductors.Select(c => conductors[c.Index])]))];
        var conductorsAt = At(conductors, c => (c.From, c.To));
        var linksAt = At(links, l => (l.A, l.B));
        ImmutableArray<SourceTerminals> sources =
            [
                .. gear.SelectMany(g =>
                    g.Sources.Select(s => new SourceTerminals(g, s, table.Of(g, s.Plus), s.Minus is { } minus ? table.Of(g, minus) : null)))
            ];
        var tracer = new PathTracer(gear, sources, table, conductorsAt, linksAt);
        return new(new Wiring
        {
            Spec = spec,
            Choices = choices,
            Gear = gear,
            Terminals = [.. table.All],
            Runs = runs,
            Conductors = conductors,
            Links = links,
            Nets = nets.All,
            NetOf = nets.Of,
            Sources = sources,
            Starter = sources.FirstOrDefault(s => s.Source is BatterySource),
            Feeds = tracer.Feeds(),
            Loads = tracer.Loads(),
            TerminalsById = table.ById.ToFrozenDictionary(StringComparer.Ordinal),
            TerminalsByGear = table.All.Where(t => t.Gear is not null)
                .GroupBy(t => t.Gear!.Id, StringComparer.Ordinal)
                .ToFrozenDictionary(g => g.Key, g => g.ToImmutableArray(), StringComparer.Ordinal),
            GearById = gear.DistinctBy(g => g.Id).ToFrozenDictionary(g => g.Id, StringComparer.Ordinal),
            RunsById = runs.DistinctBy(r => r.Id).ToFrozenDictionary(r => r.Id, StringComparer.Ordinal),
            ConductorsAt = conductorsAt,
            LinksAt = linksAt,
        }, [.. findings]);
    }

    /// <summary>Runs without any gear are one slip, however many ends they have.</summary>
    private static bool IsBare(Spec spec) => !spec.Broken && spec.Gear.IsEmpty && spec.Unread.IsEmpty && !spec.Runs.IsEmpty;

    private void Measured()
    {
        var runs = spec.Runs.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var at in spec.Readings.SelectMany(r => new[] { r.At, r.Against })
            .Concat(spec.Responses.Select(r => r.At))
            .OfType<Written<string>>())
        {
            table.FindMeasured(at, runs, findings);
        }
    }

    private ImmutableArray<ImmutableArray<T>> At<T>(ImmutableArray<T> things, Func<T, (Terminal A, Terminal B)> ends)
    {
        var at = table.All.Select(_ => ImmutableArray.CreateBuilder<T>()).ToArray();
        foreach (var thing in things)
        {
            var (a, b) = ends(thing);
            at[a.Index].Add(thing);
            if (b.Index != a.Index)
            {
                at[b.Index].Add(thing);
            }
        }

        return [.. at.Select(b => b.ToImmutable())];
    }
}
