using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Syntax;
using WireSketch.Topology;

namespace WireSketch.Testing.Mistakes;

/// <summary>Mistakes with signal cables and levels.</summary>
internal static class SignalMistakes
{
    public static IEnumerable<MistakeKind> All =>
    [
        new(
            "signal cable left out",
            false,
            ["signal/unconnected", "source/needs-load", "turn-on/not-carried", "turn-on/missing"],
            s => s.RunsOf(RunKind.Line).Select(r => new Mistake(r.Id, s.DropRun(r)))),
        new("left and right swapped", false, ["signal/swapped"], s =>
            from r in s.RunsOf(RunKind.Line)
            where r.From is [{ Nodes.Length: 4 }] && r.To is [{ Gear: not Amplifier { Channels.Length: 1 } }]
            select new Mistake(r.Id, s.Put(s.Of(r), "from", $"[{r.From[0].Id}.right, {r.From[0].Id}.left]"))),
        new(
            "speaker level into a line input",
            true,
            ["signal/wrong-level", "signal/level-high"],
            s =>
                Outputs(s).Where(o => o.Written.Find("level") is not null && Fed(s, o.Id, line: true))
                    .Select(o => new Mistake(o.Id, s.Put(o.Written, "level", "speaker")))),
        new(
            "source too strong",
            true,
            ["signal/level-high"],
            s => Outputs(s).Where(o => Fed(s, o.Id, line: false)).Select(o => new Mistake(o.Id, s.Put(o.Written, "maximum", "60 V")))),
        new(
            "source too weak",
            false,
            ["signal/level-low"],
            s => Outputs(s).Where(o => Fed(s, o.Id, line: false)).Select(o => new Mistake(o.Id, s.Put(o.Written, "maximum", "5 mV")))),
        new(
            "source without the band",
            false,
            ["signal/band-missing"],
            s =>
                s.Gear.OfType<HeadUnit>()
                    .SelectMany(g => Groups(s, g))
                    .Where(o => Fed(s, o.Id, line: false))
                    .Select(o => new Mistake(o.Id, s.Put(o.Written, "lowest", "200 Hz")))),
        new("adapter passed by", true, ["signal/wrong-level", "signal/level-high"], s =>
            from g in s.Gear.OfType<LevelAdapter>()
            from input in s.Runs.Where(r => r.To is [{ } end] && end.Gear == g)
            from output in s.Runs.Where(r => r.From is [{ } begin] && begin.Gear == g)
            select new Mistake(g.Id, s.DropGear(g), s.DropRun(output), s.Put(s.Of(input), "to", output.To[0].Id))),
        new("signal led back to its source", true, ["signal/loop"], s =>
            from g in s.Gear.OfType<Processor>()
            from r in s.Runs.Where(r => r.To is [{ Nodes.Length: 4 } end] && end.Gear == g)
            from output in Groups(s, g).Take(1)
            select new Mistake(g.Id, s.Put(s.Of(r), "from", output.Id), s.Put(s.Of(r), "wire", "line pair"))),
        new("two outputs on one input", false, ["signal/outputs-joined"], s =>
            from r in s.RunsOf(RunKind.Line)
            where r.From is [{ Nodes.Length: 4 }] && r.To.Length == 1
            from other in Outputs(s).Where(o => o.Id != r.From[0].Id && o.Id.Split('.')[0] == r.From[0].Gear.Id).Take(1)
            select new Mistake(r.Id, s.AddRun($"from: {other.Id}, to: {r.To[0].Id}, wire: line pair, length: 3 ft"))),
        new("load that the source needs left out", true, ["source/needs-load"], s =>
            from g in s.Gear.OfType<LevelAdapter>()
            where s.Of(g).Find("passes")?.Value.At.Words.Contains("load", StringComparison.Ordinal) == true
            select new Mistake(g.Id, s.Put(s.Of(g), "passes", "[dc offset]"))),
        new("input load switched off", true, ["source/needs-load"], s =>
            from g in s.Gear.OfType<Amplifier>()
            where GoodSpec.Map(s.Of(g), "settings")?.Find("input-load") is not null
            select new Mistake(g.Id, s.Put(GoodSpec.Map(s.Of(g), "settings")!, "input-load", "off"))),
    ];

    /// <summary>Groups of outputs whose facts are written in the spec itself.</summary>
    private static IEnumerable<(string Id, MapNode Written)> Outputs(GoodSpec s) =>
        s.Gear.Where(g => g is HeadUnit or Processor).SelectMany(g => Groups(s, g));

    private static IEnumerable<(string Id, MapNode Written)> Groups(GoodSpec s, Gear g) =>
        from entry in GoodSpec.Map(s.Of(g), "outputs")?.Entries ?? []
        where entry.Value is MapNode
        select ($"{g.Id}.{entry.Key.Value}", (MapNode)entry.Value);

    /// <summary>The group feeds an input; for <paramref name="line"/>, one that takes line level only.</summary>
    private static bool Fed(GoodSpec s, string group, bool line) =>
        s.Install.Answers.Signals.Any(i => i.FedBy?.StartsWith(group + ".", StringComparison.Ordinal) == true && i.Accepts is not null
            && (!line
                || i.Gear is Amplifier { InputSpeaker: null }
                || (i.Gear is Processor p && p.Inputs.All(x => x.Level == SignalLevel.Line))));
}
