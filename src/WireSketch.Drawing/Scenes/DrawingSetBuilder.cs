using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Sheets;
using WireSketch.Electrical;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>Plans the sheets of a set, lays them out, numbers them, and draws each.</summary>
internal sealed class DrawingSetBuilder
{
    private const double FindingsWidth = 150;
    private const double CautionsWidth = 158;
    private const double NotesHeight = 108;

    /// <summary>A system of no more devices stays on one sheet, whatever its scale.</summary>
    private const int FewestToSplit = 8;
    private const int FineOverview = 80;
    private const int FirstLimit = 24;
    private const int LimitStep = 4;

    /// <summary>Below this share of the least scale no other aim helps.</summary>
    private const double Hopeless = 0.85;

    /// <summary>
    /// Heights to aim at, in hundredths of the page's: a sheet that cannot be read is searched for again with another aim before it is
    /// split.
    /// </summary>
    private static readonly ImmutableArray<int> Stretches = [100, 105, 95, 112, 88];

    private const int LastLimit = 8;
    private readonly Wiring wiring;
    private readonly bool computed;
    private readonly DrawingOptions options;
    private readonly ImmutableArray<Numbered> findings;
    private readonly Figures figures;
    private readonly PaperSize paper;
    private readonly TitleFacts facts;

    public DrawingSetBuilder(Wiring wiring, ElectricalResults? answers, ImmutableArray<Finding> found, DrawingOptions options)
    {
        this.wiring = wiring;
        this.options = options;
        computed = answers is not null;
        figures = new(answers, options.State, options.Heat);
        paper = PaperSize.For(wiring.Spec.Settings, options);
        facts = TitleFacts.Of(wiring.Spec);
        // What blocks comes first, then by weight; those of one weight in the order in which they are shown elsewhere.
        findings = [
            .. Finding.InOrder(found)
                .OrderByDescending(f => f.Blocks)
                .ThenByDescending(f => f.Severity)
                .Select((f, i) => new Numbered(i + 1, Settled(f)))
        ];
    }

    public DrawingSet Draw()
    {
        var sheets = Arrange();
        var indexed = sheets.Length > 1;
        var notes = NotesFor(sheets, indexed);
        var plan = indexed || !wiring.Spec.Paths.IsEmpty ? new VehiclePlan(wiring, facts, options, paper) : null;
        var drawn = sheets.Length + (plan is null ? 0 : 1);
        var count = drawn + (notes?.Count ?? 0);
        var builder = new SceneBuilder(new()
        {
            Spec = wiring.Spec,
            Facts = facts,
            Options = options,
            Computed = computed,
            Count = count,
            Squares = sheets.Any(s => s.Sheet.Devices.Any(d => d.Reference is not null)),
            Findings = findings,
        });
        var scenes = ImmutableArray.CreateBuilder<Scene>();
        for (var i = 0; i < sheets.Length; i++)
        {
            var here = i;
            var page = Page(sheets[i].Sheet, i + 1, count, drawn + 1);
            scenes.Add(builder.Draw(sheets[i] with { Page = page }, i + 1, run => ReferenceFrom(sheets, here, run)));
        }

        if (plan is not null)
        {
            scenes.Add(plan.Draw(findings, drawn, count));
        }

        for (var i = 0; i < (notes?.Count ?? 0); i++)
        {
            scenes.Add(notes!.Draw(i, facts, options, findings, drawn + i + 1, count));
        }

        return new(scenes.ToImmutable(), indexed ? null : sheets[0].Layout.Arrangement);
    }

    /// <summary>The sheets laid out: on one if that can be read, else split; a circuit that cannot be read is split further.</summary>
    public ImmutableArray<SheetPage> Arrange()
    {
        var maker = new SheetMaker(wiring, figures, [.. findings.Select(f => f.Finding)], options);
        if (SheetPlan.Whole(wiring, maker) is { } whole)
        {
            var placed = Lay(whole);
            if (placed.Sheet.Form == LabelForm.Wide
                && Lay(SheetPlan.Whole(wiring, maker, LabelForm.Narrow)!) is { } narrow
                && narrow.Scale > placed.Scale)
            {
                placed = narrow;
            }

            if (placed.Scale is < TextSizes.LeastScale and >= TextSizes.LeastScale * Hopeless
                && Lay(SheetPlan.Whole(wiring, maker, LabelForm.Tight)!) is { } tight
                && tight.Scale > placed.Scale)
            {
                placed = tight;
            }

            if (placed.Scale >= TextSizes.LeastScale || wiring.Gear.Length <= FewestToSplit)
            {
                return [placed];
            }
        }

        var limits = new SortedDictionary<SheetKind, int>
        {
            [SheetKind.Supply] = FirstLimit,
            [SheetKind.Ground] = FirstLimit,
            [SheetKind.Signal] = FirstLimit,
            [SheetKind.Speakers] = FirstLimit
        };
        // An overview of very many devices begins coarser.
        var coarseness = wiring.Gear.Length > FineOverview ? 1 : 0;
        var layouts = new Dictionary<(SheetKind, int, string), SheetPage>();
        var apart = !Supplies(false) && Supplies(true);
        while (true)
        {
            var placed = Placed(Plan(apart));
            var tooSmall = placed.Where(p =>
                p.Scale < TextSizes.LeastScale && limits.TryGetValue(p.Sheet.Kind, out var limit) && limit > LastLimit)
                .Select(p => p.Sheet.Kind)
                .Distinct()
                .ToArray();
            var coarser = placed[0].Scale < TextSizes.LeastScale && coarseness < OverviewMaker.Coarsest;
            if (tooSmall.Length == 0 && !coarser)
            {
                return placed;
            }

            coarseness += coarser ? 1 : 0;
            foreach (var kind in tooSmall)
            {
                limits[kind] -= LimitStep;
            }
        }

        ImmutableArray<Sheet> Plan(bool apart) => SheetPlan.Split(wiring, maker, options.Audience, coarseness, limits, apart);

        ImmutableArray<SheetPage> Placed(ImmutableArray<Sheet> sheets)
        {
            var fresh = sheets.Where(s => !layouts.ContainsKey(Key(s))).ToArray();
            // Sheets do not depend on each other: laid out side by side, they are the same as one by one.
            foreach (var (sheet, done) in fresh.Zip(fresh.AsParallel().AsOrdered().Select(Lay).ToArray()))
            {
                layouts.Add(Key(sheet), done);
            }

            return [.. sheets.Select(s => layouts[Key(s)] with { Sheet = s })];
        }

        // Whether supply and ground can be read on one sheet, or on one each.
        bool Supplies(bool apart)
        {
            ImmutableArray<Sheet> sheets = [.. Plan(apart).Where(s => s.Kind is SheetKind.Supply or SheetKind.Ground)];
            return sheets.DistinctBy(s => s.Kind).Count() == sheets.Length && Placed(sheets).All(p => p.Scale >= TextSizes.LeastScale);
        }

        (SheetKind, int, string) Key(Sheet sheet) => (sheet.Kind, limits.GetValueOrDefault(sheet.Kind, coarseness), sheet.Name);
    }

    private SheetPage Lay(Sheet sheet)
    {
        var own = options.Audience == Audience.Technician ? On(sheet) : [.. findings.Where(f => f.Finding.Blocks)];
        var page = Page(sheet, 1, 1, 2);
        SheetPage? best = null;
        foreach (var stretch in sheet.Kind == SheetKind.Whole && options.Previous is null ? Stretches : [100])
        {
            var height = (int)page.Area.Height.Value * stretch / 100;
            var layout = SheetArranger.Arrange(
                sheet.Graph,
                new((int)page.Area.Width.Value, height, options.Effort, sheet.Kind == SheetKind.Whole ? options.Previous : null));
            var placed = new SheetPage(sheet, layout, page, own);
            best = best is null || placed.Scale > best.Scale ? placed : best;
            if (best.Scale >= TextSizes.LeastScale || best.Scale < TextSizes.LeastScale * Hopeless)
            {
                break;
            }
        }

        return best!;
    }

    /// <summary>The page: its foot has the same height for both audiences, so that they have the same layout.</summary>
    private PagePlan Page(Sheet sheet, int number, int count, int notesSheet)
    {
        var full = Foot(sheet, Audience.Technician, On(sheet), number, count, notesSheet);
        var own = options.Audience == Audience.Technician ? full : Foot(sheet, options.Audience, [], number, count, notesSheet);
        return new(paper, own, Math.Max(full.Height, own.Height));
    }

    private Footer Foot(Sheet sheet, Audience audience, ImmutableArray<Numbered> shown, int number, int count, int notesSheet)
    {
        var legend = new LegendBlock(sheet, shown, audience, computed, options.Heat);
        var title = new TitleBlock(facts, sheet.Name, number, count);
        var width = PagePlan.InnerWidth(paper);
        if (shown.IsEmpty)
        {
            return new(
                width,
                legend,
                new CautionBlock(
                    audience,
                    Math.Clamp(width - legend.Width - title.Width - (2 * Footer.Gap), CautionsWidth, CautionsWidth + 50)),
                title);
        }

        var rest = width - legend.Width - title.Width - (3 * Footer.Gap);
        if (rest < CautionsWidth + FindingsWidth)
        {
            // A narrow page: two rows, both filled.
            return new(
                width, legend, new CautionBlock(audience, width - legend.Width - Footer.Gap),
                new NotesBlock(shown, width - title.Width - Footer.Gap, NotesHeight, notesSheet), title);
        }

        var cautions = Math.Clamp(rest - FindingsWidth, CautionsWidth, CautionsWidth + 50);
        return new(
            width,
            legend,
            new CautionBlock(audience, cautions),
            new NotesBlock(shown, Math.Max(rest - cautions, FindingsWidth), NotesHeight, notesSheet),
            title);
    }

    /// <summary>Findings about what a sheet shows; on a single sheet all of them.</summary>
    private ImmutableArray<Numbered> On(Sheet sheet)
    {
        if (sheet.Kind == SheetKind.Whole)
        {
            return findings;
        }

        var shown = sheet.Devices.SelectMany(d => d.Subjects).Concat(sheet.Wires.Select(w => w.Run)).ToHashSet(StringComparer.Ordinal);
        return [
            .. findings.Where(f =>
                f.Finding.Subjects.Length == 0 ? sheet.Kind == SheetKind.Overview : shown.Contains(f.Finding.Subjects[0]))
        ];
    }

    private NotesPages? NotesFor(ImmutableArray<SheetPage> sheets, bool indexed)
    {
        var technician = options.Audience == Audience.Technician;
        var hidden = technician && sheets.Any(s => s.Page.Footer.Hidden > 0);
        if (!indexed && !hidden)
        {
            return null;
        }

        var index = indexed
            ? sheets.Select(s => (s.Sheet.Name, Shows(s.Sheet)))
                .Append((VehiclePlan.Name, "every device in its zone, and what is pulled from zone to zone"))
                .ToImmutableArray()
            : [];
        return new(paper, index, technician ? findings : []);
    }

    private static string Shows(Sheet sheet)
    {
        var devices = sheet.Devices.Where(d => d.Reference is null && d.Gear is not { OnlyProtects: true }).Select(d => d.Id);
        return string.Join(", ", devices);
    }

    private static Reference? ReferenceFrom(ImmutableArray<SheetPage> sheets, int here, string run)
    {
        for (var i = 0; i < sheets.Length; i++)
        {
            if (i != here && sheets[i].SquareOf(run) is { } square)
            {
                var letter = sheets[here].Sheet.Devices.First(d => d.Reference == run).Name[0];
                return new(letter, i + 1, square);
            }
        }

        return null;
    }

    /// <summary>A finding whose first subject is a run or a device of the wiring, where its first is a terminal.</summary>
    private Finding Settled(Finding finding)
    {
        if (finding.Subjects.IsEmpty
            || wiring.RunsById.ContainsKey(finding.Subjects[0])
            || wiring.GearById.ContainsKey(finding.Subjects[0]))
        {
            return finding;
        }

        var words = finding.Subjects[0];
        for (var dot = words.LastIndexOf('.'); dot > 0; dot = words.LastIndexOf('.', dot - 1))
        {
            if (wiring.GearById.ContainsKey(words[..dot]) || wiring.RunsById.ContainsKey(words[..dot]))
            {
                return finding with { Subjects = finding.Subjects.SetItem(0, words[..dot]) };
            }
        }

        return finding;
    }
}
