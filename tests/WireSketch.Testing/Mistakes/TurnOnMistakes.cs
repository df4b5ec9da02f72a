using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Topology;

namespace WireSketch.Testing.Mistakes;

/// <summary>Mistakes with what wakes devices and what switches them.</summary>
internal static class TurnOnMistakes
{
    public static IEnumerable<MistakeKind> All =>
    [
        new(
            "wake wire left out",
            true,
            ["turn-on/missing"],
            s => Remotes(s).Where(r => r.To.Any(e => IsRemote(e))).Select(r => new Mistake(r.Id, s.DropRun(r)))),
        new(
            "control wire of a relay left out",
            true,
            ["supply/missing", "turn-on/missing", "turn-on/no-source"],
            s => ToCoils(s).Select(r => new Mistake(r.Id, s.DropRun(r)))),
        new("ground of a relay left out", true, ["ground/missing"], s =>
            s.RunsOf(RunKind.Ground).Where(r => r.From.Any(e => e.Gear is Relay)).Select(r => new Mistake(r.Id, s.DropRun(r)))),
        new("woken by the battery for good", false, ["turn-on/stays-on"], s =>
            from r in Remotes(s)
            from battery in s.Gear.OfType<Battery>().Take(1)
            where r.To.All(e => IsRemote(e))
            select new Mistake(r.Id, s.Put(s.Of(r), "from", battery.Id + ".+"), s.Put(s.Of(r), "fuse", "{ rating: 1 A, at: 6 in }"))),
        new("control output as a supply", true, ["turn-on/feeds-supply"], s =>
            from wake in s.Install.Answers.Wakes
            where wake.HasControlWire && !wake.ControlSources.IsEmpty && wake.ControlSources[0].Gear is HeadUnit or Processor
            from r in s.RunsOf(RunKind.Supply)
            where r.To is [{ } end] && end.Id == wake.Gear.Id + ".+" && r.From.Length == 1
            select new Mistake(r.Id, s.Put(s.Of(r), "from", wake.ControlSources[0].Id))),
        new("wake setting is not what is wired", true, ["turn-on/mode", "turn-on/missing", "turn-on/not-carried"], s =>
            from wake in s.Install.Answers.Wakes
            let settings = GoodSpec.Map(s.Of(wake.Gear), "settings")
            where settings?.Find("wake") is not null
            select new Mistake(wake.Gear.Id, s.Put(settings, "wake", wake.HasControlWire ? "signal" : "remote"))),
        new("offset that should wake is not passed on", true, ["turn-on/not-carried", "turn-on/mode", "turn-on/missing"], s =>
            from g in s.Gear.OfType<LevelAdapter>()
            where s.Install.Answers.Wakes.Any(w => w.By == WakeMode.DcOffset) && s.Of(g).Find("passes") is not null
            select new Mistake(g.Id, s.Put(s.Of(g), "passes", "[load]"))),
        new(
            "remote output too weak",
            false,
            ["turn-on/overloaded"],
            s =>
                s.Gear.OfType<HeadUnit>()
                    .Where(g => Controls(s, g))
                    .Select(g => new Mistake(g.Id, s.Put(s.Of(g), "remote-limit", "1 mA")))),
        new(
            "woken by the starter's circuit",
            true,
            ["turn-on/start-circuit"],
            s => Ignitions(s).Select(g => new Mistake(g.Id, s.Put(s.Of(g), "live", "start")))),
        new(
            "accessory circuit that is always live",
            false,
            ["turn-on/stays-on"],
            s => Ignitions(s).Select(g => new Mistake(g.Id, s.Put(s.Of(g), "live", "constant")))),
        new("woken from two sources", false, ["turn-on/fed-twice"], s =>
            from r in Remotes(s)
            where r.To.Any(e => IsRemote(e)) && r.From.All(e => e.Gear is not IgnitionSource)
            from ignition in s.Gear.OfType<IgnitionSource>().Take(1)
            select new Mistake(
                r.Id,
                s.AddRun($"from: {ignition.Id}, to: {r.To.First(e => IsRemote(e)).Id}, wire: 18 AWG red, length: 9 ft"))),
        new("processor waits for itself", true, ["turn-on/loop", "turn-on/missing"], s =>
            from r in Remotes(s)
            where r.To is [{ Gear: Processor }]
            select new Mistake(r.Id, s.Put(s.Of(r), "from", r.To[0].Gear.Id + ".remote-out"))),
    ];

    private static IEnumerable<WiredRun> Remotes(GoodSpec s) =>
        s.RunsOf(RunKind.Control).Where(r => !r.To.Any(e => e.Gear is Relay or Switch));

    private static IEnumerable<WiredRun> ToCoils(GoodSpec s) =>
        s.Runs.Where(r =>
            r.Kind is RunKind.Control or RunKind.Supply
                && r.To.Any(e => e.Gear is Relay && e.Id.EndsWith(".86", StringComparison.Ordinal)));

    private static IEnumerable<IgnitionSource> Ignitions(GoodSpec s) => s.Gear.OfType<IgnitionSource>().Where(g => Controls(s, g));

    /// <summary>Some device is woken from there, by a wire of its own.</summary>
    private static bool Controls(GoodSpec s, Gear g) =>
        s.Runs.Any(r =>
            r.From.Any(e => e.Gear == g) && r.To.Any(e => IsRemote(e) || e.Id.EndsWith(".accessory", StringComparison.Ordinal)));

    private static bool IsRemote(RunEnd end) =>
        end.Id.EndsWith(".remote", StringComparison.Ordinal) || end.Id.EndsWith(".remote-in", StringComparison.Ordinal);
}
