using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Testing.Mistakes;

/// <summary>Mistakes with returns and the points they end on.</summary>
internal static class GroundMistakes
{
    public static IEnumerable<MistakeKind> All =>
    [
        new("ground left out", true, ["ground/missing", "ground/through-shield"], s =>
            s.RunsOf(RunKind.Ground).Where(r => !IsFactoryLead(r)).Select(r => new Mistake(r.Id, s.DropRun(r)))),
        new(
            "ground on paint",
            false,
            ["ground/bad-surface"],
            s => s.Gear.OfType<ChassisPoint>().Select(g => new Mistake(g.Id, s.Put(s.Of(g), "surface", "painted")))),
        new(
            "ground on a seat rail",
            false,
            ["ground/bad-surface"],
            s => s.Gear.OfType<ChassisPoint>().Select(g => new Mistake(g.Id, s.Put(s.Of(g), "on", "seat rail")))),
        new(
            "ground three yards long",
            false,
            ["ground/long"],
            s => ToBody(s).Select(r => new Mistake(r.Id, s.Put(s.Of(r), "length", "9 ft")))),
        new("ground too thin for its current", true, ["ground/overloaded", "supply/insulation-too-low"], s =>
            s.RunsOf(RunKind.Ground).Where(r => s.AmpsIn(r) > 30).Select(r => new Mistake(r.Id, s.Put(s.Of(r), "wire", "18 AWG black")))),
        new("ground four sizes thinner", false, ["ground/thinner", "ground/overloaded"], s =>
            from r in s.RunsOf(RunKind.Ground)
            where r.Wire.Size.Awg is { } size && size <= 14 && r.Wire.Cores == 1
            select new Mistake(r.Id, s.Put(s.Of(r), "wire", $"{WireSize.FromAwg(r.Wire.Size.Awg!.Value + 4)} black 105 C"))),
        new(
            "fuse in the ground",
            false,
            ["ground/fused"],
            s =>
                s.RunsOf(RunKind.Ground)
                    .Where(r => r.From.Length == 1)
                    .Select(r => new Mistake(r.Id, s.Put(s.Of(r), "fuse", "{ rating: 100 A, at: 4 in }")))),
        new("ground on the supply", true, ["supply/shorted", "supply/reversed", "ground/missing"], s =>
            from r in ToBody(s)
            from plus in s.Gear.OfType<Battery>().Take(1)
            select new Mistake(r.Id, s.Retarget(r, s.Of(r).Find("to")!.Value.At.Words == EndOnBody(r) ? "to" : "from", plus.Id + ".+"))),
        new("ground through a signal cable", true, ["supply/signal-cable", "spec/ends-differ"], s =>
            s.RunsOf(RunKind.Ground)
                .Where(r => !r.IsTwoWire && r.From.Length == 1 && r.To.Length == 1)
                .Select(r => new Mistake(r.Id, s.Put(s.Of(r), "wire", "line pair")))),
    ];

    /// <summary>A vehicle's own battery is on its body whether a run says so or not.</summary>
    private static bool IsFactoryLead(WiredRun run) => run.From[0].Gear is Battery { InVehicle: true } && run.To[0].Gear is ChassisPoint;

    private static IEnumerable<WiredRun> ToBody(GoodSpec s) =>
        s.RunsOf(RunKind.Ground).Where(r => r.To.Length == 1 && r.From.Length == 1 && r.To[0].Gear is ChassisPoint);

    private static string EndOnBody(WiredRun r) => r.To[0].Id;
}
