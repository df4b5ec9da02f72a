using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Syntax;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Testing.Mistakes;

/// <summary>Mistakes with supply wires, their fuses and what they lead through.</summary>
internal static class SupplyMistakes
{
    // A short wire up to a block of fuses is protected by those, if they can break the fault.
    private static readonly string[] Unprotected = [
        "supply/breaking-capacity", "supply/unfused", "supply/fuse-too-far", "supply/fed-from-both-ends"
    ];
    private static readonly string[] FuseOverWire = ["supply/fuse-above-wire", "supply/conductor-reduction"];

    public static IEnumerable<MistakeKind> All =>
    [
        new(
            "fuse left out",
            true,
            Unprotected,
            s => FromSources(s).Select(r => new Mistake(r.Id, s.Drop(s.Of(r), s.Of(r).Find("fuse") is null ? "breaker" : "fuse")))),
        new("fuse far from the source", true, Unprotected, s =>
            FromSources(s).Where(r => r.LengthTaken.Value > 1.5)
                .Select(r => new Mistake(r.Id, s.Put(s.ProtectionOf(r)!, "at", GoodSpec.Long(r.LengthTaken.Value * 0.8))))),
        new("fuse raised above the wire", true, FuseOverWire, s =>
            from r in Fused(s)
            let rating = Above(1.5 * s.AmpacityOf(r))
            where rating > 0 && s.LowestBefore(r, r.Id) > s.AmpacityOf(r)
            select new Mistake(r.Id, Fuse(s, r, rating))),
        new("fuse of a block raised above the wire", true, FuseOverWire, s =>
            from f in BlockFuses(s)
            let rating = Above(1.5 * f.Runs.Min(s.AmpacityOf))
            // A wire that is left to the compiler grows with its fuse.
            where rating > 0 && f.Runs.Any(r => !r.Wire.IsAuto && s.LowestBefore(r, f.Link.Gear!.Id) > s.AmpacityOf(r))
            select new Mistake(f.Link.Id, new Diagnostics.Edit(f.At.At, GoodSpec.Ampere(rating)))),
        new("fuse below the load", true, ["supply/fuse-below-load"], s =>
            from r in Fused(s)
            let rating = Below(0.8 * s.AmpsIn(r))
            where rating > 0
            select new Mistake(r.Id, Fuse(s, r, rating))),
        new("fuse of a block below the load", true, ["supply/fuse-below-load"], s =>
            from f in BlockFuses(s)
            let rating = Below(0.8 * f.Runs.Max(s.AmpsIn))
            where rating > 0
            select new Mistake(f.Link.Id, new Diagnostics.Edit(f.At.At, GoodSpec.Ampere(rating)))),
        new(
            "fuse of a rating that is not made",
            false,
            ["supply/unusual-rating"],
            s =>
                Fused(s).Where(r => s.Of(r).Find("fuse") is not null)
                    .Select(r => new Mistake(r.Id, s.Put(s.ProtectionOf(r)!, "rating", "37 A")))),
        new(
            "fuse without a rating",
            false,
            ["supply/rating-unknown"],
            s => Fused(s).Select(r => new Mistake(r.Id, s.Drop(s.ProtectionOf(r)!, "rating")))),
        new(
            "fuse that cannot break the fault",
            true,
            ["supply/breaking-capacity"],
            s => FromSources(s).Select(r => new Mistake(r.Id, s.Put(s.ProtectionOf(r)!, "breaking", "50 A")))),
        new("breaker that resets itself", false, ["supply/auto-reset"], s =>
            from r in Fused(s)
            where s.Of(r).Find("fuse") is not null
            select new Mistake(
                r.Id,
                s.Drop(s.Of(r), "fuse"),
                s.Put(
                    s.Of(r),
                    "breaker",
                    $"{{ rating: {s.Wiring.Links.First(l => l.Id == r.Id + ".fuse").Rating}, reset: automatic, at: 6 in, breaking: "
                        + $"10000 A }}"))),
        new("supply wire too thin for its fuse", true, FuseOverWire, s =>
            from r in s.RunsOf(RunKind.Supply)
            where s.RatingBefore(r) > 1.5 * AmpacityTable.Of(Quantities.WireSize.FromAwg(18), new(80))!.Value.Value
            select new Mistake(r.Id, s.Put(s.Of(r), "wire", r.IsTwoWire ? "2 x 18 AWG 80 C" : "18 AWG red 80 C"))),
        new("supply wire of copper-clad aluminum", false, ["supply/clad-wire", .. FuseOverWire], s =>
            s.RunsOf(RunKind.Supply)
                .Where(r => r.Wire.Type is null && s.RatingBefore(r) > 0.85 * s.AmpacityOf(r))
                .Select(r => new Mistake(r.Id, s.Put(s.Of(r), "wire", s.Of(r).Find("wire")!.Value.At.Words + " CCA")))),
        new("supply wire six times as long", false, ["supply/drop", "supply/insufficient", "supply/slow-fault"], s =>
            s.RunsOf(RunKind.Supply)
                .Where(r => s.AmpsIn(r) > 5)
                .Select(r => new Mistake(r.Id, s.Put(s.Of(r), "length", GoodSpec.Long(r.LengthTaken.Value * 6))))),
        new("supply wire left out", true, ["supply/missing", "supply/insufficient", "turn-on/no-source", "turn-on/missing"], s =>
            s.RunsOf(RunKind.Supply).Where(r => !IsReturn(r) && !IsAll(s, r)).Select(r => new Mistake(r.Id, s.DropRun(r)))),
        new(
            "both wires of a device left out",
            false,
            ["spec/unconnected"],
            s => s.RunsOf(RunKind.Supply).Where(r => IsAll(s, r)).Select(r => new Mistake(r.Id, s.DropRun(r)))),
        new("plus and minus swapped at a device", true, ["supply/reversed", "supply/shorted", "supply/missing"], s =>
            from g in s.Gear
            where s.Wiring.TerminalOf(g, "+") is { } plus
                && s.Wiring.TerminalOf(g, "-") is { } minus
                && s.Wiring.IsWired(plus)
                && s.Wiring.IsWired(minus)
            let edits = s.Rename(($"{g.Id}.+", $"{g.Id}.-"), ($"{g.Id}.-", $"{g.Id}.+")).ToArray()
            where edits.Length > 1
            select new Mistake(g.Id, edits)),
        new("supply wire ends on the body", true, ["supply/shorted"], s =>
            s.RunsOf(RunKind.Supply)
                .Where(r =>
                    s.Ground is not null && GoodSpec.Only(r.To) is { Nodes.Length: 1 } && !r.IsTwoWire && !double.IsNaN(s.RatingBefore(r)))
                .Select(r => new Mistake(r.Id, s.Retarget(r, "to", s.Ground!)))),
        new(
            "supply through a signal cable",
            true,
            ["supply/signal-cable", "spec/ends-differ"],
            s => s.RunsOf(RunKind.Supply).Where(r => !r.IsTwoWire).Select(r => new Mistake(r.Id, s.Put(s.Of(r), "wire", "line pair")))),
        new("insulation too low for the engine bay", true, ["supply/insulation-too-low", .. FuseOverWire], s =>
            from r in s.RunsOf(RunKind.Supply)
            where r.Wire.Type is null
                && r.Wire.Insulation.Value > 100
                && r.From.Concat(r.To).Any(e => e.Gear.Zone == "engine bay")
                && s.AmpsIn(r) > 5
            select new Mistake(
                r.Id,
                s.Put(s.Of(r), "wire", s.Of(r).Find("wire")!.Value.At.Words.Replace("105 C", "60 C", StringComparison.Ordinal)))),
        new("isolator joined through", false, ["energy/mixed-chemistry", "energy/parasitic-drain"], s =>
            from g in s.Gear.OfType<Isolator>()
            let minus = s.Runs.Where(r => r.From.Concat(r.To).Any(e => e.Id == g.Id + ".-")).ToArray()
            select new Mistake(g.Id, [
                new(s.Of(g).At, "{ is: bus bar, studs: 4, rating: 400 A }"),
                .. minus.Select(s.DropRun),
                .. s.Rename((g.Id + ".main", g.Id), (g.Id + ".second", g.Id))
            ])),
        new("isolator the wrong way round", false, ["supply/isolator-reversed"], s =>
            s.Gear.OfType<Isolator>()
                .Select(g => new Mistake(g.Id, [.. s.Rename((g.Id + ".main", g.Id + ".second"), (g.Id + ".second", g.Id + ".main"))]))),
        new("contact too small", true, ["supply/contact-overloaded"], s =>
            from g in s.Gear
            let key = g is Relay ? "contact" : "rating"
            where g is Relay or Switch or Isolator
                && s.Of(g).Find(key) is not null
                && s.Wiring.ConductorsAt.SelectMany(c => c)
                    .Any(c => (c.From.Gear == g || c.To.Gear == g) && c.Kind == RunKind.Supply && Amps(s, c) > 1)
            select new Mistake(g.Id, s.Put(s.Of(g), key, "0.5 A"))),
        new(
            "vehicle circuit overloaded",
            true,
            ["supply/tap-overloaded"],
            s =>
                s.Gear.OfType<TapPoint>()
                    .Where(g => s.Of(g).Find("limit") is not null)
                    .Select(g => new Mistake(g.Id, s.Put(s.Of(g), "limit", "0.5 A")))),
        new(
            "block too small",
            false,
            ["supply/holder-mismatch"],
            s => s.Gear.Where(g => g is FuseBlock or DistributionBlock).Select(g => new Mistake(g.Id, s.Put(s.Of(g), "rating", "1 A")))),
        new("alternator too small", false, ["energy/alternator-short"], s =>
            GoodSpec.Map(GoodSpec.Map(s.Root, "job"), "vehicle") is { } v
                ? [new Mistake("job.vehicle", s.Put(v, "alternator", "20 A"))]
                : []),
        new(
            "battery too small",
            false,
            ["energy/parasitic-drain", "energy/reserve-short"],
            s => s.Gear.OfType<Battery>().Take(1).Select(g => new Mistake(g.Id, s.Put(s.Of(g), "capacity", "2 Ah")))),
    ];

    private static double Amps(GoodSpec s, Conductor c) => Math.Abs(s.Install.Answers.State(SystemState.FullOutput).Amps[c.Index].Value);

    /// <summary>Supply runs with a fuse or breaker of their own.</summary>
    private static IEnumerable<WiredRun> Fused(GoodSpec s) =>
        s.RunsOf(RunKind.Supply).Where(r => s.ProtectionOf(r)?.Find("rating") is not null);

    /// <summary>Those that begin at a battery.</summary>
    private static IEnumerable<WiredRun> FromSources(GoodSpec s) => Fused(s).Where(r => r.From.Any(e => e.Gear is Battery));

    /// <summary>A second wire of a device's minus may pass as supply where both ends are sources' minus.</summary>
    private static bool IsReturn(WiredRun r) => r.From.Concat(r.To).All(e => e.Id.EndsWith(".-", StringComparison.Ordinal));

    /// <summary>A cable that is all that a device has: without it the device may be meant for later.</summary>
    private static bool IsAll(GoodSpec s, WiredRun r) =>
        r.IsTwoWire && s.Runs.Count(x => x.From.Concat(x.To).Any(e => e.Gear == r.To[0].Gear)) == 1;

    private static IEnumerable<(InternalConnection Link, SyntaxNode At, WiredRun[] Runs)> BlockFuses(GoodSpec s) =>
        from g in s.Gear.OfType<FuseBlock>()
        from entry in GoodSpec.Map(s.Of(g), "fuses")?.Entries ?? []
        let link = s.Wiring.Links.FirstOrDefault(l => l.Gear == g && l.Protects && l.B.Id == $"{g.Id}.out.{entry.Key.Value}")
        where link is not null
        let runs = s.Runs.Where(r => r.Conductors.Any(c => c.From == link.B || c.To == link.B)).ToArray()
        where runs.Length > 0
        select (link, entry.Value, runs);

    private static Diagnostics.Edit[] Fuse(GoodSpec s, WiredRun r, double rating)
    {
        var fuse = s.ProtectionOf(r)!;
        return fuse.Find("style") is null
            ? [s.Put(fuse, "rating", GoodSpec.Ampere(rating))]
            : [s.Put(fuse, "rating", GoodSpec.Ampere(rating)), s.Drop(fuse, "style")];
    }

    private static double Above(double amps) => FuseTable.AllRatings.Select(a => a.Value).Where(a => a > amps).DefaultIfEmpty(0).Min();

    private static double Below(double amps) => FuseTable.AllRatings.Select(a => a.Value).Where(a => a < amps).DefaultIfEmpty(0).Max();
}
