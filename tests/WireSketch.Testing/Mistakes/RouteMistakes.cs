using WireSketch.Syntax;

namespace WireSketch.Testing.Mistakes;

/// <summary>Mistakes with the way that wires take.</summary>
internal static class RouteMistakes
{
    public static IEnumerable<MistakeKind> All =>
    [
        new("no grommet through the firewall", true, ["route/no-grommet"], s =>
            // Where its path passes a grommet, the run need not say so again.
            s.Runs.Where(r =>
                s.Of(r).Find("through") is not null
                    && !r.Route.Any(p => p.Path.Passes.Any(w => w.Value.Contains("grommet", StringComparison.Ordinal))))
                .Select(r => new Mistake(r.Id, s.Drop(s.Of(r), "through")))),
        new("no loom in the engine bay", false, ["route/bare-in-engine-bay"], s =>
            s.Runs.Where(r => s.Of(r).Find("protect") is not null && r.From.Concat(r.To).Any(e => e.Gear.Zone == "engine bay"))
                .Select(r => new Mistake(r.Id, s.Drop(s.Of(r), "protect")))),
        new(
            "length left out",
            true,
            ["route/no-length"],
            s => s.Runs.Where(r => s.Of(r).Find("length") is not null).Select(r => new Mistake(r.Id, s.Drop(s.Of(r), "length")))),
    ];
}

/// <summary>Slips in the writing.</summary>
internal static class WritingMistakes
{
    public static IEnumerable<MistakeKind> All =>
    [
        new(
            "unit left out",
            true,
            ["spec/unit"],
            s => Lengths(s).Select(x => new Mistake(x.Id, s.Put(x.Run, "length", x.Length.At.Words.Split(' ')[0])))),
        new(
            "wrong unit",
            true,
            ["spec/unit"],
            s => Lengths(s).Select(x => new Mistake(x.Id, s.Put(x.Run, "length", x.Length.At.Words.Split(' ')[0] + " A")))),
        new("terminal misspelt", true, ["spec/reference"], s =>
            from r in s.Runs
            where s.Of(r).Find("to")!.Value is ScalarNode scalar && scalar.Value.Contains('.', StringComparison.Ordinal)
            select new Mistake(r.Id, s.Put(s.Of(r), "to", ((ScalarNode)s.Of(r).Find("to")!.Value).Value + "x"))),
        new(
            "device misspelt",
            true,
            ["spec/reference"],
            s =>
                s.Runs.Where(r => s.Of(r).Find("from")!.Value is ScalarNode)
                    .Select(r => new Mistake(r.Id, s.Put(s.Of(r), "from", "q" + ((ScalarNode)s.Of(r).Find("from")!.Value).Value)))),
        new(
            "key misspelt",
            true,
            ["spec/unknown-key", "spec/missing"],
            s =>
                s.Runs.Select(r =>
                    new Mistake(r.Id, new Diagnostics.Edit(s.Of(r).Entries[^1].Key.At, s.Of(r).Entries[^1].Key.Value + "s")))),
        new(
            "run written twice",
            true,
            ["spec/duplicate-key", "spec/id"],
            s => s.Runs.Take(3).Select(r => new Mistake(r.Id, Twice(s, r.Id)))),
        new(
            "kind misspelt",
            true,
            ["spec/unknown-kind"],
            s => s.Gear.Where(g => s.Of(g).Find("is") is not null).Select(g => new Mistake(g.Id, s.Put(s.Of(g), "is", g.Kind + "s")))),
        new(
            "part misspelt",
            true,
            ["spec/reference"],
            s =>
                s.Gear.Where(g => s.Of(g).Find("part") is not null).Select(g => new Mistake(g.Id, s.Put(s.Of(g), "part", "no-such-part")))),
        new(
            "zone misspelt",
            true,
            ["spec/reference"],
            s => s.Gear.Where(g => s.Of(g).Find("zone") is not null).Select(g => new Mistake(g.Id, s.Put(s.Of(g), "zone", "nowhere")))),
        new("run from a terminal to itself", true, ["spec/value", "spec/reference", "spec/ends-differ"], s =>
            from r in s.Runs
            where s.Of(r).Find("from")!.Value is ScalarNode && s.Of(r).Find("hookup") is null
            select new Mistake(r.Id, s.Put(s.Of(r), "to", s.Of(r).Find("from")!.Value.At.Words))),
    ];

    private static IEnumerable<(string Id, MapNode Run, SyntaxNode Length)> Lengths(GoodSpec s) =>
        s.Runs.Where(r => s.Of(r).Find("length") is not null).Select(r => (r.Id, s.Of(r), s.Of(r).Find("length")!.Value));

    private static Diagnostics.Edit Twice(GoodSpec s, string id)
    {
        var entry = ((MapNode)s.Root.Find("runs")!.Value).Find(id)!;
        var line = s.File.LineStart(entry.Key.At.Line);
        return new(new(s.File, line, 0), s.File.Text[line..(s.File.Text.IndexOf('\n', entry.At.End) + 1)]);
    }
}
