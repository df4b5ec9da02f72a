using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>
/// The vehicle plan: a plain outline from above, front to the left, with every device in its zone, and for each boundary between
/// two zones the wires that must be pulled through it. It shows zones, not measured places.
/// </summary>
internal sealed class VehiclePlan(Wiring wiring, TitleFacts facts, DrawingOptions options, PaperSize paper)
{
    public const string Name = "Vehicle plan";

    private const double Row = 21.5;
    private const double Item = 84;
    private const double Trunk = 26;
    private readonly Palette palette = Palette.Of(options.Tint);

    private ImmutableArray<(string Zone, ImmutableArray<Gear> Gear)> Zones { get; } = ZonesOf(wiring);

    /// <summary>Draws the sheet.</summary>
    public Scene Draw(ImmutableArray<Numbered> findings, int number, int count)
    {
        var page = new Draft(Frame.Page, palette);
        var width = PagePlan.InnerWidth(paper);
        var footer = new Footer(width, new CautionBlock(options.Audience, 240), new TitleBlock(facts, Name, number, count));
        var plan = new PagePlan(paper, footer, footer.Height);
        SheetHeader.Draw(page, facts, FormattableString.Invariant($"sheet {number}: {Name}"), null, [.. findings.Where(f => f.Finding.Blocks)], width);
        var (x, y, height) = (plan.Area.X.Value, plan.Area.Y.Value, plan.Area.Height.Value);
        var body = height * 0.62;
        var edges = Outline(page, x, y, width, body);
        for (var i = 0; i < Zones.Length; i++)
        {
            Band(page, i, edges[i], edges[i + 1], y + 14, body - 28);
        }

        Routes(page, edges, y + 14 + body - 28 - Trunk, x, y + body + 12, width, height - body - 12);
        footer.Draw(page, PagePlan.Margin, plan.FooterTop);
        return new(
            Name, FormattableString.Invariant($"{facts.Title}: {Name}, sheet {number} of {count}"),
            string.Join("; ", Zones.Select(z => $"{z.Zone}: {string.Join(", ", z.Gear.Select(g => g.Id))}")) + ".", paper.Width, paper.Height, palette.Paper, page.Shapes);
    }

    private static ImmutableArray<(string, ImmutableArray<Gear>)> ZonesOf(Wiring wiring)
    {
        var gear = wiring.Gear.Where(g => !wiring.Runs.Any(r => ReferenceEquals(r.Holder, g))).ToArray();
        var order = wiring.Spec.Zones.Select(z => z.Id).ToList();
        return [.. gear.GroupBy(g => g.Zone ?? "elsewhere", StringComparer.Ordinal).OrderBy(g => order.IndexOf(g.Key) is var i && i < 0 ? int.MaxValue : i).Select(g => (g.Key, g.ToImmutableArray()))];
    }

    /// <summary>Draws the outline and returns the edges of the zones: wider where more stands in them.</summary>
    private double[] Outline(Draft page, double x, double y, double width, double height)
    {
        var d = page.Inner();
        var dark = new Look(page.Palette.Hairline, page.Palette.Hatch, 0.8);
        foreach (var wheel in (double[])[x + (width * 0.15), x + (width * 0.76)])
        {
            d.Rect(wheel, y + 4, 62, 12, 4, dark);
            d.Rect(wheel, y + height - 16, 62, 12, 4, dark);
        }

        d.Rect(x, y + 10, width, height - 20, 46, new(page.Palette.Box, page.Palette.Hatch, 1.6));
        d.Rect(x + 3, y + 13, width - 6, height - 26, 43, new(null, page.Palette.Hairline, 0.8));
        d.Add(new TextShape(new(x + 14.5, y + (height / 2) + 14), 6.4, TextAnchor.Start, [new("FRONT", FontWeight.Regular, page.Palette.Quiet)], 0.8, Upwards: true));
        page.Group("Outline of the vehicle, front to the left", d, new Mark("data-outline", "vehicle"));
        var weights = Zones.Select(z => Math.Max(1, Math.Ceiling(z.Gear.Length / 7.0))).ToArray();
        var inner = width - 40;
        var edges = new double[Zones.Length + 1];
        edges[0] = x + 20;
        for (var i = 0; i < weights.Length; i++)
        {
            edges[i + 1] = edges[i] + (inner * weights[i] / weights.Sum());
        }

        return edges;
    }

    private void Band(Draft page, int index, double left, double right, double top, double height)
    {
        var (zone, gear) = Zones[index];
        var d = page.Inner();
        var facts = wiring.Spec.Zones.FirstOrDefault(z => z.Id == zone);
        var warm = facts?.AmbientOrDefault.Value >= 50;
        d.Rect(left + 1.5, top + 8, right - left - 3, height - 16, 4, Look.Filled(warm ? page.Palette.WarmZone : index % 2 == 0 ? page.Palette.OtherZone : page.Palette.Zone));
        var heading = LineBreaker.Break(zone.ToUpperInvariant(), right - left - 20, 6.6, FontWeight.SemiBold, 1);
        d.Add(new TextShape(new(left + 8, top + 19), 6.6, TextAnchor.Start, [new(heading[0], FontWeight.SemiBold, page.Palette.Quiet)], 0.5));
        var rows = Math.Max(1, (int)((height - 16 - 18 - Trunk) / Row));
        var columns = Math.Max(1, (int)((right - left - 8) / Item));
        var room = (right - left - 10) / columns;
        var fit = gear.Length <= rows * columns ? gear.Length : (rows * columns) - 1;
        for (var i = 0; i < fit; i++)
        {
            Device(d, gear[i], left + 6 + (i / rows * room), top + 24 + (i % rows * Row), room - 4);
        }

        if (fit < gear.Length)
        {
            d.Text(left + 6 + (fit / rows * room), top + 24 + (fit % rows * Row) + 9, (Points)6.6, string.Create(CultureInfo.InvariantCulture, $"and {gear.Length - fit} more"), Tone.Quiet);
        }

        page.Group(null, d, new Mark("data-zone", zone));
        if (facts is { WallTowardsNext: true } && index < Zones.Length - 1)
        {
            page.Lines(Look.Line(page.Palette.Hatch, 2.4), [right, top + 8, right, top + height - 8]);
        }
    }

    private static void Device(Draft page, Gear gear, double x, double y, double width)
    {
        var d = page.Inner();
        d.Rect(x, y, width, Row - 3, 2.5, new(page.Palette.Box, page.Palette.Ink, 0.8, gear.InVehicle ? (3, 2.2) : default));
        var name = LineBreaker.Break(GearWords.Name(gear.Id), width - 8, 6.8, FontWeight.SemiBold, 1);
        d.Text(x + 4, y + 7.8, (Points)6.8, name.IsEmpty ? "" : name[0], Tone.Strong);
        var place = LineBreaker.Break(gear.Facts.Place?.Value ?? gear.Kind, width - 8, 6, FontWeight.Regular, 1);
        d.Text(x + 4, y + 15, (Points)6, place.IsEmpty ? "" : place[0], Tone.Quiet);
        page.Group(null, d, new Mark("data-gear", gear.Id));
    }

    private void Routes(Draft page, double[] edges, double trunk, double x, double y, double width, double height)
    {
        page.Text(x, y + 6, (Points)7, new WordLine([new("ROUTES", Tone.Quiet)]), TextAnchor.Start, 1);
        var ranks = Zones.Select((z, i) => (z.Zone, i)).ToDictionary(p => p.Zone, p => p.i, StringComparer.Ordinal);
        var crossings = Enumerable.Range(0, Math.Max(0, Zones.Length - 1)).Select(b => wiring.Runs.Where(r => Crosses(r, b)).ToArray()).ToArray();
        var column = (width + 14) / Math.Max(1, crossings.Length);
        for (var b = 0; b < crossings.Length; b++)
        {
            var runs = crossings[b];
            if (runs.Length > 0)
            {
                var thick = Math.Min(9, 2.5 + runs.Length);
                page.Lines(Look.Line(page.Palette.Ink, thick) with { RoundEnds = true }, [(edges[b] + edges[b + 1]) / 2, trunk, (edges[b + 1] + edges[b + 2]) / 2, trunk]);
                page.Circle(edges[b + 1], trunk, 8.5, new(page.Palette.Box, page.Palette.Ink, 1.1));
                page.Text(edges[b + 1], trunk + 2.6, (Points)7.4, new WordLine([new(runs.Length.ToString(CultureInfo.InvariantCulture), Tone.Strong)]), TextAnchor.Middle);
            }

            Block(page, b, runs, x + (b * column), y + 14, column - 14, height - 14);
        }

        bool Crosses(WiredRun run, int boundary)
        {
            var zones = run.From.Concat(run.To).Select(e => ranks[e.Gear.Zone ?? "elsewhere"]).ToArray();
            return zones.Min() <= boundary && zones.Max() > boundary;
        }
    }

    private void Block(Draft page, int boundary, WiredRun[] runs, double x, double y, double width, double height)
    {
        var through = runs.Select(r => r.Run.Through?.Value).OfType<string>().Distinct();
        var kinds = runs.GroupBy(r => r.Kind).OrderBy(g => g.Key).Select(g => $"{LabelWords.Kind(g.Key)}: {string.Join(", ", g.Select(r => r.Id))}");
        var lines = new List<(string Words, Tone Tone)>();
        Add($"{Zones[boundary].Zone} to {Zones[boundary + 1].Zone}", Tone.Strong);
        foreach (var kind in kinds)
        {
            Add(kind, Tone.Plain);
        }

        var wall = wiring.Spec.Zones.Any(z => z.Id == Zones[boundary].Zone && z.WallTowardsNext);
        if (wall)
        {
            Add("through " + (through.Any() ? string.Join(", ", through) : "the wall"), Tone.Quiet);
        }

        foreach (var path in wiring.Spec.Paths.Where(p => p.From?.Value == Zones[boundary].Zone && p.To?.Value == Zones[boundary + 1].Zone))
        {
            var hazards = path.Hazard.Concat(path.Beside).Select(h => h.Value).ToArray();
            Add(GearWords.Join(path.Id, path.Length?.Words ?? "", hazards.Length > 0 ? "beside " + string.Join(", ", hazards) : ""), Tone.Quiet);
        }

        var most = Math.Max(1, (int)(height / FooterBlock.Leading));
        for (var i = 0; i < Math.Min(most, lines.Count); i++)
        {
            var words = i == most - 1 && lines.Count > most ? "…" : lines[i].Words;
            page.Text(x, y + 6 + (i * FooterBlock.Leading), FooterBlock.Size, words, lines[i].Tone);
        }

        void Add(string words, Tone tone) =>
            lines.AddRange(LineBreaker.Break(words, width, FooterBlock.Size, tone == Tone.Strong ? FontWeight.SemiBold : FontWeight.Regular).Select(l => (l, tone)));
    }
}
