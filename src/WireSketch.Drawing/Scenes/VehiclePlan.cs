using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>
/// The vehicle plan: a plain outline from above, front to the left, with every device in its zone, and for each boundary between
/// two zones the wires that must be pulled through it. It shows zones, not measured places.
/// </summary>
internal sealed class VehiclePlan
{
    public const string Name = "Vehicle plan";

    /// <summary>Heights of a device with its place on two lines or on one.</summary>
    private const double TallRow = 29;
    private const double Row = 21.5;
    private const double PlaceLeading = 7.4;

    private const double Item = 84;
    private const double Trunk = 26;
    private readonly Wiring wiring;
    private readonly TitleFacts facts;
    private readonly DrawingOptions options;
    private readonly PaperSize paper;

    public VehiclePlan(Wiring wiring, TitleFacts facts, DrawingOptions options, PaperSize paper)
    {
        (this.wiring, this.facts, this.options, this.paper) = (wiring, facts, options, paper);
        Zones = ZonesOf(wiring);
        Crossings = CrossingsOf(wiring, [.. Zones.Select(z => z.Zone)]);
    }

    private ImmutableArray<(string Zone, ImmutableArray<Gear> Gear)> Zones { get; }

    private ImmutableArray<ImmutableArray<WiredRun>> Crossings { get; }

    /// <summary>Draws the sheet.</summary>
    public Scene Draw(ImmutableArray<Numbered> findings, int number, int count)
    {
        var palette = Palette.Of(options.Theme);
        var page = new ShapeBuilder(Frame.Page, palette);
        var width = PagePlan.InnerWidth(paper);
        var footer = new Footer(width, new CautionBlock(options.Audience, 240), new TitleBlock(facts, Name, number, count));
        var plan = new PagePlan(paper, footer, footer.Height);
        SheetHeader.Draw(
            page,
            facts,
            FormattableString.Invariant($"sheet {number}: {Name}"),
            null,
            [.. findings.Where(f => f.Finding.Blocks)],
            width);
        var (x, y, height) = (plan.Area.X.Value, plan.Area.Y.Value, plan.Area.Height.Value);
        var column = (width + 14) / Math.Max(1, Crossings.Length);
        var blocks = Crossings.Select((_, b) => Block(b, column - 14)).ToArray();
        var routes = 14 + (blocks.Select(b => b.Count).DefaultIfEmpty(0).Max() * FooterBlock.Leading);
        var body = Math.Clamp(height - 26 - routes, height * 0.55, height * 0.8);
        var edges = Outline(page, x, y, width, body);
        // Tall rows if they hold everything.
        var tall = Zones.Select((z, i) => z.Gear.Length <= RowsIn(body - 28, TallRow) * ColumnsIn(edges[i + 1] - edges[i]))
            .All(fits => fits);
        var row = tall ? TallRow : Row;
        for (var i = 0; i < Zones.Length; i++)
        {
            Band(page, i, new(edges[i], edges[i + 1], y + 14, body - 28), row);
        }

        Routes(page, blocks, edges, y + 14 + body - 28 - Trunk, new(x, y + body + 12, column, height - body - 12));
        footer.Draw(page, PagePlan.Margin, plan.FooterTop);
        return new()
        {
            Name = Name,
            Title = FormattableString.Invariant($"{facts.Title}: {Name}, sheet {number} of {count}"),
            Description = string.Join("; ", Zones.Select(z => $"{z.Zone}: {string.Join(", ", z.Gear.Select(g => g.Id))}")) + ".",
            Width = paper.Width,
            Height = paper.Height,
            Paper = palette.Paper,
            Shapes = page.Shapes,
        };
    }

    private static ImmutableArray<(string Zone, ImmutableArray<Gear> Gear)> ZonesOf(Wiring wiring)
    {
        var gear = wiring.Gear.Where(g => !wiring.Runs.Any(r => ReferenceEquals(r.Holder, g))).ToArray();
        var order = wiring.Spec.Zones.Select(z => z.Id).ToList();
        return [
            .. gear.GroupBy(SheetGroups.ZoneOf, StringComparer.Ordinal)
                .OrderBy(g => order.IndexOf(g.Key) is var i && i < 0 ? int.MaxValue : i)
                .Select(g => (g.Key, g.ToImmutableArray()))
        ];
    }

    /// <summary>Draws the outline and returns the edges of the zones: wider where more stands in them.</summary>
    private double[] Outline(ShapeBuilder page, double x, double y, double width, double height)
    {
        var d = page.Inner();
        var dark = new ShapeStyle(page.Palette.Hairline, page.Palette.Hatch, 0.8);
        foreach (var wheel in (double[])[x + (width * 0.15), x + (width * 0.76)])
        {
            d.Rect(wheel, y + 4, 62, 12, 4, dark);
            d.Rect(wheel, y + height - 16, 62, 12, 4, dark);
        }

        d.Rect(x, y + 10, width, height - 20, 46, new(page.Palette.Box, page.Palette.Hatch, 1.6));
        d.Rect(x + 3, y + 13, width - 6, height - 26, 43, new(null, page.Palette.Hairline, 0.8));
        foreach (var (words, at) in ((string, double)[])[("RIGHT", y + 19.5), ("LEFT", y + height - 14.5)])
        {
            d.Add(new TextShape(
                new(x + (width / 2), at),
                6.2,
                TextAnchor.Middle,
                [new(words, FontWeight.Regular, page.Palette.Quiet)],
                0.8));
        }

        d.Add(new TextShape(
            new(x + 14.5, y + (height / 2) + 14),
            6.4,
            TextAnchor.Start,
            [new("FRONT", FontWeight.Regular, page.Palette.Quiet)],
            0.8,
            Upwards: true));
        page.Group("Outline of the vehicle, front to the left", d, new ShapeAttribute("data-outline", "vehicle"));
        var weights = Zones.Select(z => Math.Max(1, Math.Ceiling(z.Gear.Length / 7.0))).ToArray();
        var inner = width - 40;
        // The smallest zone still holds a device and its heading.
        var least = Math.Min(Item + 10, inner / weights.Length);
        var edges = new double[Zones.Length + 1];
        edges[0] = x + 20;
        for (var i = 0; i < weights.Length; i++)
        {
            edges[i + 1] = edges[i] + least + ((inner - (least * weights.Length)) * weights[i] / weights.Sum());
        }

        return edges;
    }

    private static int RowsIn(double height, double row) => Math.Max(1, (int)((height - 16 - 18 - Trunk) / row));

    private static int ColumnsIn(double width) => Math.Max(1, (int)((width - 8) / Item));

    private void Band(ShapeBuilder page, int index, Column column, double row)
    {
        var (left, right, top, height) = column;
        var (zone, gear) = Zones[index];
        var d = page.Inner();
        var facts = wiring.Spec.Zones.FirstOrDefault(z => z.Id == zone);
        d.Rect(left + 1.5, top + 8, right - left - 3, height - 16, 4, ShapeStyle.Filled(page.Palette.OfZone(wiring.Spec, zone)));
        var heading = LineBreaker.Break((facts?.DisplayName ?? zone).ToUpperInvariant(), right - left - 20, 6.6, FontWeight.SemiBold, 1);
        d.Add(new TextShape(
            new(left + 8, top + 19),
            6.6,
            TextAnchor.Start,
            [new(heading[0], FontWeight.SemiBold, page.Palette.Quiet)],
            0.5));
        var (rows, columns) = (RowsIn(height, row), ColumnsIn(right - left));
        var room = (right - left - 10) / columns;
        var cells = Cells(gear, rows, columns);
        foreach (var cell in cells)
        {
            Device(d, cell.Gear, left + 6 + (cell.Column * room), top + 24 + (cell.Row * row), room - 4, row - 3);
        }

        if (cells.Length < gear.Length)
        {
            d.Text(
                left + 6 + ((columns - 1) * room),
                top + 24 + ((rows - 1) * row) + 9,
                (Points)6.6,
                string.Create(CultureInfo.InvariantCulture, $"and {gear.Length - cells.Length} more"),
                TextEmphasis.Quiet);
        }

        page.Group(null, d, new ShapeAttribute("data-zone", zone));
        if (facts is { WallTowardsNext: true } && index < Zones.Length - 1)
        {
            page.Lines(ShapeStyle.Line(page.Palette.Hatch, 2.4), [right, top + 8, right, top + height - 8]);
        }
    }

    /// <summary>
    /// Rows and columns of a zone's devices: what stands on the right of the vehicle at the top, on the left at the bottom, the rest
    /// between; where there are too many, one after the other, the last place left free for their number.
    /// </summary>
    private static ImmutableArray<(Gear Gear, int Row, int Column)> Cells(ImmutableArray<Gear> gear, int rows, int columns)
    {
        Gear[] right = [
            .. gear.Where(g => SideOf(g) == "right")
        ], left = [.. gear.Where(g => SideOf(g) == "left")], middle = [.. gear.Where(g => SideOf(g).Length == 0)];
        var (upper, center, lower) = (Rows(right), Rows(middle), Rows(left));
        if (upper + center + lower <= rows)
        {
            var first = Math.Clamp((rows - center) / 2, upper, rows - lower - center);
            return [.. At(right, 0), .. At(middle, first), .. At(left, rows - lower)];
        }

        var all = right.Concat(middle).Concat(left).ToArray();
        return [.. At(all.Length <= rows * columns ? all : all[..((rows * columns) - 1)], 0)];

        int Rows(Gear[] some) => (some.Length + columns - 1) / columns;

        IEnumerable<(Gear, int, int)> At(Gear[] some, int row) => some.Select((g, i) => (g, row + (i / columns), i % columns));
    }

    /// <summary>left or right, if its place or its name says so; else empty.</summary>
    private static string SideOf(Gear gear)
    {
        var words = $"{gear.Facts.Place?.Value} {gear.DisplayName}"
            .ToLowerInvariant()
            .Split([' ', ',', '.', ';'], StringSplitOptions.RemoveEmptyEntries);
        return words.FirstOrDefault(w => w is "left" or "right") ?? "";
    }

    private static void Device(ShapeBuilder page, Gear gear, double x, double y, double width, double height)
    {
        var d = page.Inner();
        var name = LineBreaker.Break(gear.DisplayName, width - 8, 6.8, FontWeight.SemiBold, 1);
        var place = LineBreaker.Break(gear.Facts.Place?.Value ?? gear.Kind, width - 8, 6, FontWeight.Regular, height > Row ? 2 : 1);
        d.Rect(
            x,
            y,
            width,
            place.Length > 1 ? height : Row - 3,
            2.5,
            new(page.Palette.Box, page.Palette.Ink, 0.8, gear.InVehicle ? (3, 2.2) : default));
        d.Text(x + 4, y + 7.8, (Points)6.8, name.IsEmpty ? "" : name[0], TextEmphasis.Strong);
        for (var i = 0; i < place.Length; i++)
        {
            d.Text(x + 4, y + 15 + (i * PlaceLeading), (Points)6, place[i], TextEmphasis.Quiet);
        }

        page.Group(null, d, new ShapeAttribute("data-gear", gear.Id));
    }

    private void Routes(ShapeBuilder page, List<(string Words, TextEmphasis Emphasis)>[] blocks, double[] edges, double trunk, Table table)
    {
        var (x, y, column, height) = table;
        page.Text(x, y + 6, (Points)7, new TextLine([new("ROUTES", TextEmphasis.Quiet)]), TextAnchor.Start, 1);
        for (var b = 0; b < Crossings.Length; b++)
        {
            var runs = Crossings[b];
            if (runs.Length > 0)
            {
                var thick = Math.Min(9, 2.5 + runs.Length);
                page.Lines(
                    ShapeStyle.Line(page.Palette.Ink, thick) with { RoundEnds = true },
                    [(edges[b] + edges[b + 1]) / 2, trunk, (edges[b + 1] + edges[b + 2]) / 2, trunk]);
                page.Circle(edges[b + 1], trunk, 8.5, new(page.Palette.Box, page.Palette.Ink, 1.1));
                page.Text(
                    edges[b + 1],
                    trunk + 2.6,
                    (Points)7.4,
                    new TextLine([new(runs.Length.ToString(CultureInfo.InvariantCulture), TextEmphasis.Strong)]),
                    TextAnchor.Middle);
            }

            var lines = blocks[b];
            var most = Math.Max(1, (int)((height - 14) / FooterBlock.Leading));
            for (var i = 0; i < Math.Min(most, lines.Count); i++)
            {
                var words = i == most - 1 && lines.Count > most ? "…" : lines[i].Words;
                page.Text(x + (b * column), y + 20 + (i * FooterBlock.Leading), FooterBlock.Size, words, lines[i].Emphasis);
            }
        }
    }

    /// <summary>The runs that pass from each zone to the next.</summary>
    private static ImmutableArray<ImmutableArray<WiredRun>> CrossingsOf(Wiring wiring, ImmutableArray<string> zones)
    {
        var ranks = zones.Select((z, i) => (z, i)).ToDictionary(p => p.z, p => p.i, StringComparer.Ordinal);
        return [
            .. Enumerable.Range(0, Math.Max(0, zones.Length - 1)).Select(b => wiring.Runs.Where(r => Crosses(r, b)).ToImmutableArray())
        ];

        bool Crosses(WiredRun run, int boundary)
        {
            var at = run.From.Concat(run.To).Select(e => ranks[SheetGroups.ZoneOf(e.Gear)]).ToArray();
            return at.Min() <= boundary && at.Max() > boundary;
        }
    }

    /// <summary>
    /// Place in the row of zones of a zone, or of the zone of the device that stands at a place; null if neither is known.
    /// </summary>
    private int? RankOf(Written<string>? end)
    {
        var zone = wiring.Gear.FirstOrDefault(g =>
            string.Equals(g.Facts.Place?.Value, end?.Value, StringComparison.OrdinalIgnoreCase))?.Zone
            ?? end?.Value;
        var rank = Zones.ToList().FindIndex(z => z.Zone == zone);
        return rank < 0 ? null : rank;
    }

    private string NameOf(string zone) => wiring.Spec.Zones.FirstOrDefault(z => z.Id == zone)?.DisplayName ?? zone;

    /// <summary>What passes a boundary, with lengths, through what and along which paths.</summary>
    private List<(string Words, TextEmphasis Emphasis)> Block(int boundary, double width)
    {
        var runs = Crossings[boundary];
        var lines = new List<(string Words, TextEmphasis Emphasis)>();
        Add($"{NameOf(Zones[boundary].Zone)} to {NameOf(Zones[boundary + 1].Zone)}", TextEmphasis.Strong);
        foreach (var kind in runs.GroupBy(r => r.Kind).OrderBy(g => g.Key))
        {
            Add($"{LabelText.Kind(kind.Key)}: {string.Join(", ", kind.Select(Piece))}", TextEmphasis.Plain);
        }

        var through = runs.Select(r => r.Guard).OfType<string>().Distinct().ToArray();
        if (wiring.Spec.Zones.Any(z => z.Id == Zones[boundary].Zone && z.WallTowardsNext) && runs.Length > 0)
        {
            Add("through " + (through.Length > 0 ? string.Join(", ", through) : "the wall"), TextEmphasis.Quiet);
        }

        foreach (var path in wiring.Spec.Paths.Where(p =>
            RankOf(p.From) is { } from && RankOf(p.To) is { } to && Math.Min(from, to) <= boundary && Math.Max(from, to) > boundary))
        {
            var hazards = path.Hazard.Select(h => h.Words).Concat(path.Beside.Select(b => b.Value)).ToArray();
            Add(
                "along " + GearDrawing.Join(
                    DeviceLabels.WithUnits(
                        $"{path.Id} ({GearDrawing.Join(path.Length?.Words ?? "", $"{path.From?.Value} to {path.To?.Value}")})"),
                    path.Passes.Length > 0 ? "past " + string.Join(", ", path.Passes.Select(p => p.Value)) : "",
                    hazards.Length > 0 ? "beside " + string.Join(", ", hazards) : ""), TextEmphasis.Quiet);
        }

        return lines;

        static string Piece(WiredRun run) =>
            run.Length is not null
                ? $"{run.Id}{DeviceLabels.Unbroken}({LabelText.Length(run).Replace(' ', DeviceLabels.Unbroken)})"
                : run.Id;

        void Add(string words, TextEmphasis emphasis) =>
            lines.AddRange(LineBreaker.Break(
                words,
                width,
                FooterBlock.Size,
                emphasis == TextEmphasis.Strong ? FontWeight.SemiBold : FontWeight.Regular)
                .Select(l => (l, emphasis)));
    }

    /// <summary>Where a zone stands.</summary>
    private readonly record struct Column(double Left, double Right, double Top, double Height);

    /// <summary>Where the routes are listed: its corner, the width of each list, and the height of all.</summary>
    private readonly record struct Table(double X, double Y, double Column, double Height);
}
