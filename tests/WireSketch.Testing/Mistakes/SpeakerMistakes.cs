using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Syntax;
using WireSketch.Topology;

namespace WireSketch.Testing.Mistakes;

/// <summary>Mistakes between amplifiers and speakers.</summary>
internal static class SpeakerMistakes
{
    private static readonly string[] BelowMinimum = ["load/below-minimum", "load/bridged-below-minimum", "load/shorted"];

    public static IEnumerable<MistakeKind> All =>
    [
        new("coil reversed", true, ["load/coil-reversed"], s =>
            from r in s.RunsOf(RunKind.Speaker)
            where r.To is [{ Gear: Speaker { CoilCount: 2 } }]
                && r.Run.Hookup?.Coils == HookupWay.Parallel
                && GoodSpec.Only(r.From) is not null
            let speaker = r.To[0].Gear.Id
            select new Mistake(r.Id, s.Put(s.Of(r), "to", speaker + ".coil.1"), s.Drop(s.Of(r), "hookup"),
                s.AddRun($"from: {r.From[0].Id}, to: [{speaker}.coil.2.-, {speaker}.coil.2.+], wire: 12 AWG, length: 9 ft"))),
        new(
            "one driver of a set reversed",
            false,
            ["load/coil-reversed"],
            s =>
                OneDriver(s).Select(r =>
                    new Mistake(r.Id, s.Put(s.Of(r), "to", $"[{r.To[0].Gear.Id}.coil.1.-, {r.To[0].Gear.Id}.coil.1.+]")))),
        new("coil left open", true, ["load/coil-open"], s =>
            from r in s.RunsOf(RunKind.Speaker)
            where r.To is [{ Gear: Speaker { CoilCount: 2 } }] && s.Of(r).Find("hookup") is not null
            select new Mistake(r.Id, s.Put(s.Of(r), "to", r.To[0].Gear.Id + ".coil.1"), s.Drop(s.Of(r), "hookup"))),
        new(
            "speaker wire left out",
            false,
            ["spec/unconnected", "load/coil-open", "signal/unconnected"],
            s => s.RunsOf(RunKind.Speaker).Where(r => r.From[0].Gear is Amplifier).Select(r => new Mistake(r.Id, s.DropRun(r)))),
        new("speaker output on the body", true, ["load/output-grounded"], s =>
            s.Ground is { } ground
                ? Channels(s).Select(c => new Mistake(c.Id, s.AddRun($"from: {c.Id}.-, to: {ground}, wire: 14 AWG, length: 12 in")))
                : []),
        new("speaker output on the supply", true, ["load/output-grounded", "supply/shorted"], s =>
            Channels(s).Where(c => s.Wiring.IsWired(s.Wiring.TerminalOf(c.Gear, "+")!))
                .Select(c => new Mistake(c.Id, s.AddRun($"from: {c.Gear.Id}.+, to: {c.Id}.+, wire: 14 AWG, length: 12 in")))),
        new("two outputs tied", true, ["load/outputs-tied"], s =>
            from pair in Channels(s).Where(c => c.BridgedWith is null).GroupBy(c => c.Gear.Id)
            where pair.Count() > 1
            select new Mistake(pair.Key, s.AddRun($"from: {pair.First().Id}.+, to: {pair.Last().Id}.+, wire: 14 AWG, length: 12 in"))),
        new("output shorted", true, ["load/shorted"], s =>
            Channels(s).Where(c => c.BridgedWith is null)
                .Select(c => new Mistake(c.Id, s.AddRun($"from: {c.Id}.+, to: {c.Id}.-, wire: 14 AWG, length: 2 in")))),
        new("coils below the channel's minimum", true, BelowMinimum, s =>
            from c in Channels(s)
            where c.Minimum is not null
            from driver in c.Coils.Select(x => x.Speaker).Distinct()
            select new Mistake(
                driver.Id,
                s.Put(s.Of(driver), "coils", driver.CoilCount == 1 ? "0.4 ohm" : $"{driver.CoilCount} x 0.4 ohm"))),
        new("minimum above the load", true, BelowMinimum, s =>
            from g in s.Gear.OfType<Amplifier>()
            from entry in GoodSpec.Map(s.Of(g), "channels")?.Entries ?? []
            where entry.Value is MapNode map
                && map.Find("minimum") is not null
                && Channels(s).Any(c => c.Gear == g && c.Channel == entry.Key.Value)
            select new Mistake($"{g.Id}.{entry.Key.Value}", s.Put((MapNode)entry.Value, "minimum", "16 ohm"))),
        new("bridge from the wrong sides", true, ["load/bridge-sides", "load/outputs-tied", "load/coil-open"], s =>
            from r in Bridges(s)
            let half = r.From.Select(e => e.Id[..^2]).ToArray()
            from sides in (string[])["-+", "++", "--"]
            select new Mistake($"{r.Id} {sides}", s.Put(s.Of(r), "from", $"[{half[0]}.{sides[0]}, {half[1]}.{sides[1]}]"))),
        new(
            "bridge below its minimum",
            true,
            ["load/bridged-below-minimum"],
            s => Bridges(s).Select(r => new Mistake(r.Id, s.Put(s.Of(r.To[0].Gear), "coils", "2 ohm")))),
        new("all in parallel instead of series", true, BelowMinimum, s =>
            s.RunsOf(RunKind.Speaker)
                .Where(r => r.Run.Hookup is { Coils: HookupWay.Series })
                .Select(r => new Mistake(r.Id, s.Put(s.Of(r), "hookup", "parallel")))),
        new("driver far too small", true, ["load/coil-overpowered"], s =>
            from c in Channels(s)
            from driver in c.Coils.GroupBy(x => x.Speaker)
            where driver.All(x => x.Power is not null)
            select new Mistake(
                driver.Key.Id,
                s.Put(s.Of(driver.Key), "handles", FormattableString.Invariant($"{driver.Sum(x => x.Power!.Value.Value) / 5:0.#} W")))),
        new(
            "hookup left out",
            true,
            ["spec/hookup-missing"],
            s =>
                s.RunsOf(RunKind.Speaker)
                    .Where(r => s.Of(r).Find("hookup") is not null)
                    .Select(r => new Mistake(r.Id, s.Drop(s.Of(r), "hookup")))),
        new("tweeter without its high-pass", false, ["load/no-high-pass"], s =>
            from g in s.Gear.OfType<Processor>()
            from output in GoodSpec.Map(s.Of(g), "outputs")?.Entries ?? []
            where output.Key.Value is "high" or "mid"
                && output.Value is MapNode map
                && GoodSpec.Map(map, "settings")?.Find("high-pass") is not null
            select new Mistake($"{g.Id}.{output.Key.Value}", s.Put((MapNode)output.Value, "settings", "{}"))),
        new(
            "speaker wire thin and long",
            false,
            ["load/wire-loss"],
            s => OneDriver(s).Select(r => new Mistake(r.Id, s.Put(s.Of(r), "wire", "22 AWG"), s.Put(s.Of(r), "length", "40 ft")))),
    ];

    /// <summary>Channels of amplifiers that drive something.</summary>
    private static IEnumerable<ChannelResult> Channels(GoodSpec s) =>
        s.Install.Answers.Channels.Where(c => c.Gear is Amplifier && !c.Coils.IsEmpty);

    private static IEnumerable<WiredRun> OneDriver(GoodSpec s) =>
        s.RunsOf(RunKind.Speaker)
            .Where(r => r.To is [{ Gear: Speaker { CoilCount: 1 } }] && r.From.Length == 1 && r.From[0].Gear is Amplifier);

    private static IEnumerable<WiredRun> Bridges(GoodSpec s) =>
        s.RunsOf(RunKind.Speaker).Where(r => r.From.Length == 2 && r.From.All(e => e.Gear is Amplifier));
}
