using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Layout;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>Makes the graph of one sheet from the runs that it shows, and gathers what is to be written at every part.</summary>
internal sealed class SheetMaker(Wiring wiring, Figures figures, ImmutableArray<Finding> findings, DrawingOptions options)
{
    /// <summary>Width that names, captions and facts are broken to where there is room, and where there is not.</summary>
    private const int WideText = 88;
    private const int NarrowText = 58;

    /// <summary>Room that a finding's mark takes in a line.</summary>
    internal const int MarkWidth = 13;

    /// <summary>The most marks at one thing; the margin tells of the rest.</summary>
    internal const int MostMarks = 3;

    private const int SignWidth = 19;

    /// <summary>What a label is wider than its text.</summary>
    internal const int ChipPadding = 5;

    private readonly Dictionary<string, int> marked = findings.SelectMany(f => f.Subjects.Take(1))
        .CountBy(id => id, StringComparer.Ordinal)
        .ToDictionary(StringComparer.Ordinal);

    /// <summary>Makes a sheet.</summary>
    /// <param name="kind">What it is about.</param>
    /// <param name="name">Its name.</param>
    /// <param name="runs">Runs to show, in the order of the spec.</param>
    /// <param name="members">Devices that have their place on it; a run's other ends become references. Null for all.</param>
    /// <param name="letters">Reference letter by run, for runs that are cut.</param>
    /// <param name="form">Room for labels.</param>
    /// <param name="repeated">Devices that stand on other sheets of the circuit too.</param>
    public Sheet Make(
        SheetKind kind,
        string name,
        ImmutableArray<WiredRun> runs,
        IReadOnlySet<string>? members,
        IReadOnlyDictionary<string, string> letters,
        LabelForm form,
        IReadOnlySet<string>? repeated = null)
    {
        var parts = new SheetGroups();
        foreach (var gear in wiring.Gear.Where(g => members?.Contains(g.Id) ?? !wiring.Runs.Any(r => ReferenceEquals(r.Holder, g))))
        {
            parts.Add(gear).Repeated = repeated?.Contains(gear.Id) == true;
        }

        foreach (var run in runs)
        {
            Place(run, parts, letters, form);
        }

        var zones = Zones(parts);
        var shown = zones.Select((z, i) => (z.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        // Sizes are those of the technician's words, so that both audiences have the same layout.
        var width = form == LabelForm.Wide ? WideText : NarrowText;
        var full = parts.Devices.Select(d => Text(d, width, Audience.Technician, form, kind)).ToArray();
        var boxes = parts.Devices.Select((d, i) => Box(d, full[i], shown[d.Zone])).ToImmutableArray();
        var texts = options.Audience == Audience.Technician
            ? full
            : [.. parts.Devices.Select(d => Text(d, width, options.Audience, form, kind))];
        return new(kind, name, new([.. zones], boxes, WireTrees.Of(parts.Links)), [.. texts], [.. parts.Wires], form);
    }

    private void Place(WiredRun run, SheetGroups parts, IReadOnlyDictionary<string, string> letters, LabelForm form)
    {
        var (begins, ends) = Ends(run);
        var from = begins.Select(e => Port(e, begins, run, parts, letters, ends[0].Gear)).ToImmutableArray();
        var to = ends.Select(e => Port(e, ends, run, parts, letters, begins[0].Gear)).ToImmutableArray();
        var label = new Label(
            LabelText.For(run, figures, form, options.Audience),
            LabelText.For(run, figures, form, Audience.Technician),
            LabelText.For(run, figures, form, Audience.Customer));
        var wire = new SheetWire(
            run.Id, run.Kind, [.. from.Distinct()], [.. to.Distinct()], LabelText.Step(run), LabelText.Colors(run, 0), [],
            LabelText.AccessibleText(run))
        {
            Fans = Fans(run),
            Origin = run.Run.Origin ?? Origin.New,
            LabelColors = LabelText.AllColors(run),
            HeatStep = figures.HeatOf(run) is { } share ? ColorScale.StepOf(figures.Heat, share) : null
        };
        var links = new List<(string Net, ImmutableArray<string> Ends)>();
        if (from.Length > 1 && to.Length > 1)
        {
            // Two lists are joined one to one; where they differ in length, at the last of the shorter one.
            for (var i = 0; i < Math.Max(from.Length, to.Length); i++)
            {
                links.Add(
                    (NetAt(begins[Math.Min(i, from.Length - 1)]), [from[Math.Min(i, from.Length - 1)], to[Math.Min(i, to.Length - 1)]]));
            }
        }
        else
        {
            links.Add((NetAt(begins[0]), [.. (from.Length > 1 ? to.Concat(from) : from.Concat(to)).Distinct()]));
        }

        var labeled = 0;
        if (run.Holder is { } holder && (parts.Knows(holder.Id) || parts.Knows(begins[0].Gear.Id)))
        {
            var device = parts.Add(holder);
            device.Run = run;
            var (into, outOf) = (device.Port(holder.Id + ".in", "", PortSide.Left), device.Port(holder.Id + ".out", "", PortSide.Right));
            var (net, whole) = links[0];
            var behind = NetAt(ends[0]);
            links[0] = (net, [whole[0], into]);
            links.Insert(1, (behind == net ? net + "#2" : behind, [outOf, .. whole[1..]]));
            // The label stands on the longer piece.
            labeled = run.Run.Protection?.Distance is { } d && d.Value.Value > run.LengthTaken.Value / 2 ? 0 : 1;
        }

        // A second core says by its id alone what it belongs to.
        var idOnly = new TextLine([new(run.Id, TextEmphasis.Strong)]);
        var second = new Label([idOnly], [idOnly], [idOnly]);
        var cores = run.Holder is null ? 1 : 2;
        for (var i = 0; i < links.Count; i++)
        {
            var id = links.Count == 1 ? run.Id : $"{run.Id}#{Number(i + 1)}";
            var said = i == labeled ? label : i >= cores ? second : null;
            var kind = i >= cores
                && IsReturn(begins[Math.Min(i - cores + 1, begins.Length - 1)], ends[Math.Min(i - cores + 1, ends.Length - 1)])
                ? RunKind.Ground
                : run.Kind;
            parts.Link(
                wire with { Kind = kind, Net = links[i].Net, Label = said?.Shown ?? [], Colors = LabelText.Colors(run, i - cores + 1) },
                Link(run, id, kind, links[i].Net, links[i].Ends, said));
        }
    }

    /// <summary>Each of its cores has one end here and one there: where it parts, nothing is joined.</summary>
    private static bool Fans(WiredRun run) => run.From.Sum(e => e.Nodes.Length) == run.To.Sum(e => e.Nodes.Length);

    private static bool IsReturn(params ReadOnlySpan<RunEnd> ends)
    {
        foreach (var end in ends)
        {
            if (end.Nodes[0].Role == TerminalRole.Ground)
            {
                return true;
            }
        }

        return false;
    }

    private string NetAt(RunEnd end) => wiring.NetOf[end.Nodes[0].Index].Id;

    /// <summary>The ends to draw: a pair whose cores part at single terminals is drawn core by core.</summary>
    private static (ImmutableArray<RunEnd> From, ImmutableArray<RunEnd> To) Ends(WiredRun run)
    {
        return (Cores(run.From, run.To), Cores(run.To, run.From));

        static ImmutableArray<RunEnd> Cores(ImmutableArray<RunEnd> ends, ImmutableArray<RunEnd> partners) =>
            ends.Length == 1 && ends[0].Nodes.Length == 2 && partners.Length == 2 && partners.All(p => p.Nodes.Length == 1)
                ? [.. ends[0].Nodes.Select(n => new RunEnd(n.Id, ends[0].Gear, n.Shape, [n], ends[0].At))]
                : ends;
    }

    private WireLink Link(WiredRun run, string id, RunKind kind, string net, ImmutableArray<string> ends, Label? label)
    {
        var mark = MarkRoom([run.Id]);
        var width = label is null ? 0 : Math.Max(Width(label.Full, mark), Width(label.Plain, mark)) + ChipPadding;
        var height = label is null ? 0 : (label.Full.Length * 9) + 2;
        return new(
            id, run.Id, net, LabelText.Kind(kind), ends[0], ends[1..], width, height, StrokeWidths.Cased(LabelText.Step(run)), run.Guard);
    }

    /// <summary>Room that the marks of findings take.</summary>
    public int MarkRoom(ImmutableArray<string> subjects) => MarkRoom(subjects.Sum(id => marked.GetValueOrDefault(id)));

    /// <summary>Room that so many marks take, as far as they are drawn.</summary>
    public static int MarkRoom(int marks) => MarkWidth * Math.Min(MostMarks, marks);

    private static int Width(ImmutableArray<TextLine> label, int mark) =>
        label.Select((line, i) => TextSizes.Up(TextSizes.Width(line)) + LabelRoom(label, i) + (i == 0 ? mark : 0)).Max();

    /// <summary>Room that the frame of a kind's letter takes.</summary>
    internal const int KindRoom = 11;

    /// <summary>
    /// Room for the kind's letter, which stands before the second line, or before the first if the second is a computed one.
    /// </summary>
    internal static int LabelRoom(ImmutableArray<TextLine> label, int line) =>
        line == (label.Length > 1 && label[1].Parts[0].Emphasis != TextEmphasis.Computed ? 1 : 0) ? KindRoom : 0;

    private string Port(
        RunEnd end,
        ImmutableArray<RunEnd> beside,
        WiredRun run,
        SheetGroups parts,
        IReadOnlyDictionary<string, string> letters,
        Gear partner)
    {
        if (!parts.Knows(end.Gear.Id))
        {
            var letter = letters.GetValueOrDefault(run.Id, "?");
            // The second core of a cable goes on by a flag of its own: a flag belongs to one net.
            var core = beside.Select(NetAt).Distinct().ToList().IndexOf(NetAt(end));
            var id = core <= 0 ? run.Id + ":on" : $"{run.Id}:on{Number(core + 1)}";
            var reference = parts.AddReference(id, LastShown(partner, end.Gear, parts), run.Id, letter);
            return reference.Port(
                id,
                "",
                TerminalLabels.Side(end, IsBehind(partner, end.Gear)) is PortSide.Right ? PortSide.Right : PortSide.Left);
        }

        var device = parts.Add(end.Gear);
        var side = TerminalLabels.Side(end, IsBehind(partner, end.Gear));
        // A bar has a stud for each run; elsewhere runs share the terminal.
        return end.Gear.Drawing.Form == DrawnForm.Bar
            ? device.Port(
                $"{end.Id}.{Number(device.Ports.Count + 1)}",
                "",
                partner.Drawing.Form == DrawnForm.GroundPoint ? PortSide.Bottom : side)
            : end.Gear.Drawing.Form == DrawnForm.GroundPoint ? device.Port(end.Id, "", side)
            : device.Landing(end.Id, run.Id, TerminalLabels.Name(end, run, wiring), side);
    }

    /// <summary>The zone on the way from one device to another that the sheet shows and that is nearest to the other.</summary>
    private string LastShown(Gear from, Gear towards, SheetGroups parts)
    {
        var (near, far) = (ZoneRank(from), ZoneRank(towards));
        var step = Math.Sign(far - near);
        for (var rank = far; rank != near; rank -= step)
        {
            if (parts.Shows(wiring.Spec.Zones[rank].Id))
            {
                return wiring.Spec.Zones[rank].Id;
            }
        }

        return SheetGroups.ZoneOf(from);
    }

    private bool IsBehind(Gear partner, Gear device) => ZoneRank(partner) > ZoneRank(device);

    private int ZoneRank(Gear gear) => gear.Zone is { } id ? Math.Max(0, wiring.Spec.Zones.ToList().FindIndex(z => z.Id == id)) : 0;

    private List<ZoneBox> Zones(SheetGroups parts)
    {
        var used = parts.Devices.Select(d => d.Zone).ToHashSet(StringComparer.Ordinal);
        var zones = wiring.Spec.Zones.Where(z => used.Remove(z.Id))
            .Select(z => (z.Id, z.WallTowardsNext, z.DisplayName))
            .Concat(used.Order(StringComparer.Ordinal).Select(u => (u, false, u)))
            .ToArray();
        return [
            .. zones.Select((z, i) =>
                new ZoneBox(
                    z.Item1,
                    TextSizes.Up(FontMetrics.Width(z.Item3.ToUpperInvariant(), 7, FontWeight.SemiBold, 1)) + 16,
                    z.Item2 && i < zones.Length - 1))
        ];
    }

    private SheetDevice Text(SheetGroup part, int width, Audience audience, LabelForm form, SheetKind kind)
    {
        if (part.Gear is not { } gear)
        {
            return new(
                part.Id, null, DeviceSymbol.Reference, [part.Letter ?? ""], [], [], [.. part.Ports.Select(p => p.Name)], false, [])
            {
                Reference = part.ReferenceTo
            };
        }

        if (part.Run is { } run)
        {
            var rating = run.Holder?.Rating?.Words ?? run.Run.Protection?.Rating.Words ?? "";
            var distance = run.Run.Protection?.Distance is { } d ? $"{d.Words} from {Short(run.From[0])}" : "";
            return new(
                part.Id,
                gear,
                gear.Drawing.Symbol,
                [rating],
                audience == Audience.Technician && distance.Length > 0 ? [.. LineBreaker.Break(distance, 60, TextSizes.Body, most: 2)] : [],
                [], ["", ""], run.Run.Protection is { InVehicle: true }, [gear.Id]);
        }

        var facts = ImmutableArray.CreateBuilder<TextLine>();
        if (audience == Audience.Technician)
        {
            facts.AddRange((form == LabelForm.Tight || kind is SheetKind.Supply or SheetKind.Ground ? [] : DeviceLabels.Settings(gear))
                .SelectMany(s => LineBreaker.Break(s, width, TextSizes.Body))
                .Select(s => TextLine.Of(s, TextEmphasis.Quiet)));
            facts.AddRange(figures.Gear(gear)
                .SelectMany(s => LineBreaker.Break(DeviceLabels.ByParts(s), width, TextSizes.Body))
                .Select(s => TextLine.Of(s, TextEmphasis.Computed)));
        }

        var name = LineBreaker.Break(gear.DisplayName, width, TextSizes.Name, FontWeight.SemiBold, 2);
        var captions = First(
            form == LabelForm.Tight ? 3 : 5,
            [
                .. DeviceLabels.Captions(gear, audience)
                    .Concat(part.Repeated ? ["also on other sheets"] : [])
                    .SelectMany(c => LineBreaker.Break(c, width, TextSizes.Body, most: 3))
            ]);
        return new(
            part.Id,
            gear,
            gear.Drawing.Symbol,
            name,
            captions,
            facts.ToImmutable(),
            [.. part.Ports.Select(p => gear.SpeakerParts is [VoiceCoil] && facts.Count > 0 && part.Ports.Count == 1 ? "" : p.Name)],
            gear.InVehicle,
            [gear.Id]);
    }

    /// <summary>The first lines; the last of them says that more would follow.</summary>
    private static ImmutableArray<string> First(int most, ImmutableArray<string> lines) =>
        lines.Length <= most ? lines : [.. lines[..(most - 1)], lines[most - 1].TrimEnd(',', '…') + "…"];

    private static string Short(RunEnd end) => end.Gear.Id;

    private DeviceBox Box(SheetGroup part, SheetDevice text, int zone)
    {
        var mark = MarkRoom(text.Subjects);
        var captions = text.Captions.Select(c => TextSizes.Up(FontMetrics.Width(c, TextSizes.Body))).DefaultIfEmpty(0).Max();
        var facts = text.Facts.Select(f => TextSizes.Up(TextSizes.Width(f))).DefaultIfEmpty(0).Max();
        var name = text.Name.Select(n => TextSizes.Up(FontMetrics.Width(n, TextSizes.Name, FontWeight.SemiBold))).DefaultIfEmpty(0).Max();
        var ports = part.Ports.Select(p =>
            new PortBox(
                p.Id,
                p.Side,
                p.Name.Length == 0 ? 0 : TextSizes.Up(FontMetrics.Width(p.Name, TextSizes.Body)) + 4,
                part.Gear is Connector,
                TerminalLabels.HasFreeSides(part.Gear)))
            .ToImmutableArray();
        var under = part.Ports.Select(p => TextSizes.Up(FontMetrics.Width(p.Name, TextSizes.Body))).DefaultIfEmpty(0).Max();
        var names = TextSizes.Up(TextSizes.NameLeading * text.Name.Length);
        var lines = TextSizes.Up(TextSizes.Leading * text.Captions.Length);
        var foot = LowerNames(part) + (text.Facts.IsEmpty ? 0 : TextSizes.Up(TextSizes.Leading * text.Facts.Length) + 3);
        return part switch
        {
            { Gear: null } => new(part.Id, zone, DeviceShape.Slim, Reference.Width, 0, 0, ports),
            { Run: not null } =>
                new(
                    part.Id,
                    zone,
                    DeviceShape.Holder,
                    Math.Max(
                        36,
                        Math.Max(captions, TextSizes.Up(FontMetrics.Width(text.Name[0], TextSizes.Rating, FontWeight.SemiBold)) + mark)
                            + 8),
                    11,
                    lines + (lines > 0 ? 2 : 0),
                    ports),
            { Gear.Drawing.Form: DrawnForm.GroundPoint } =>
                new(part.Id, zone, DeviceShape.Chassis, 22 + Math.Max(name + mark, captions) + 2, names, lines + 2, ports),
            _ when IsSlim(part, text) =>
                new(
                    part.Id,
                    zone,
                    DeviceShape.Slim,
                    6 + Math.Max(SignWidth + name + mark, Math.Max(captions, Math.Max(facts, under))) + 6,
                    0,
                    lines + foot + (text.Ports.Any(p => p.Length > 0) ? 9 : 0),
                    ports,
                    Group(part)),
            _ =>
                new(
                    part.Id,
                    zone,
                    DeviceShape.Box,
                    6 + Math.Max((text.Sign == DeviceSymbol.None ? 0 : SignWidth) + name + mark, Math.Max(captions, facts)) + 6,
                    HeadHeight(text) + lines + 5,
                    foot,
                    ports,
                    Group(part)),
        };
    }

    /// <summary>Height of symbol and name.</summary>
    internal static int HeadHeight(SheetDevice text) =>
        Math.Max(text.Sign == DeviceSymbol.None ? 0 : 16, TextSizes.Up(TextSizes.NameLeading * text.Name.Length));

    /// <summary>Names of lower terminals stand under the facts.</summary>
    private static int LowerNames(SheetGroup part) => part.Ports.Any(p => p.Side == PortSide.Bottom && p.Name.Length > 0) ? 9 : 0;

    private static bool IsSlim(SheetGroup part, SheetDevice text) =>
        part.Ports.Count == 1 && text.Name.Length == 1 && part.Gear?.Drawing.Form is DrawnForm.EndPoint or DrawnForm.SlimBox;

    private static string? Group(SheetGroup part) => part.Gear?.Facts.Place?.Value;

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);

    /// <summary>A label as it is shown, and as each audience would see it: its room is that of the larger.</summary>
    private sealed record Label(ImmutableArray<TextLine> Shown, ImmutableArray<TextLine> Full, ImmutableArray<TextLine> Plain);
}
