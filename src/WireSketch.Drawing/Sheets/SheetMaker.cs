using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Layout;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>Makes the graph of one sheet from the runs that it shows, and gathers what is to be written at every part.</summary>
internal sealed class SheetMaker(Wiring wiring, Figures figures, ImmutableArray<Finding> findings, DrawingOptions options)
{
    /// <summary>Width that a caption is broken to.</summary>
    private const int CaptionWidth = 88;

    /// <summary>Room that a finding's mark takes in a line.</summary>
    private const int MarkWidth = 11;

    private const int SignWidth = 19;

    private readonly HashSet<string> marked = [.. findings.SelectMany(f => f.Subjects.Take(1))];

    /// <summary>Makes a sheet.</summary>
    /// <param name="kind">What it is about.</param>
    /// <param name="name">Its name.</param>
    /// <param name="runs">Runs to show, in the order of the spec.</param>
    /// <param name="members">Devices that have their place on it; a run's other ends become references. Null for all.</param>
    /// <param name="letters">Reference letter by run, for runs that are cut.</param>
    /// <param name="form">Room for labels.</param>
    public Sheet Make(SheetKind kind, string name, ImmutableArray<WiredRun> runs, IReadOnlySet<string>? members, IReadOnlyDictionary<string, string> letters, LabelForm form)
    {
        var parts = new Parts();
        foreach (var gear in wiring.Gear.Where(g => members?.Contains(g.Id) ?? Touches(g, runs)))
        {
            parts.Add(gear);
        }

        foreach (var run in runs)
        {
            Place(run, parts, letters, form);
        }

        var zones = Zones(parts);
        var shown = zones.Select((z, i) => (z.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        var texts = parts.Devices.Select(d => Text(d)).ToImmutableArray();
        var boxes = parts.Devices.Select((d, i) => Box(d, texts[i], shown[d.Zone])).ToImmutableArray();
        return new(kind, name, new([.. zones], boxes, [.. parts.Links]), texts, [.. parts.Wires]);
    }

    private static bool Touches(Gear gear, ImmutableArray<WiredRun> runs) => runs.Any(r => ReferenceEquals(r.Holder, gear) || r.From.Concat(r.To).Any(e => ReferenceEquals(e.Gear, gear)));

    private void Place(WiredRun run, Parts parts, IReadOnlyDictionary<string, string> letters, LabelForm form)
    {
        var label = LabelWords.For(run, figures, form, options.Audience);
        var from = run.From.Select((e, i) => Port(e, run, parts, letters, run.To[0].Gear, "from" + Number(i))).ToImmutableArray();
        var to = run.To.Select((e, i) => Port(e, run, parts, letters, run.From[0].Gear, "to" + Number(i))).ToImmutableArray();
        var wire = new SheetWire(run.Id, run.Kind, from, to, LabelWords.Step(run), LabelWords.Colours(run), label, LabelWords.Spoken(run));
        var net = wiring.NetOf[run.From[0].Nodes[0].Index].Id;
        if (run.Holder is { } holder && (parts.Knows(holder.Id) || parts.Knows(run.From[0].Gear.Id)))
        {
            var device = parts.Add(holder);
            device.Run = run;
            var (into, outOf) = (device.Port(holder.Id + ".in", "", PortSide.Left), device.Port(holder.Id + ".out", "", PortSide.Right));
            var atStart = run.Run.Protection?.Distance is not { } d || d.Value.Value <= run.Length.Value / 2;
            var behind = wiring.NetOf[run.To[0].Nodes[0].Index].Id;
            parts.Link(wire with { Label = atStart ? [] : label }, Link(run, run.Id + "#1", net, [.. from, into], atStart ? [] : label));
            parts.Link(wire with { Label = atStart ? label : [] }, Link(run, run.Id + "#2", behind == net ? net + "#2" : behind, [outOf, .. to], atStart ? label : []));
            return;
        }

        if (from.Length > 1 && to.Length > 1)
        {
            // Two lists are joined one to one where they are of a length, else at the last of the shorter one.
            for (var i = 0; i < Math.Max(from.Length, to.Length); i++)
            {
                var text = i == 0 ? label : [];
                parts.Link(wire with { Label = text }, Link(run, $"{run.Id}#{Number(i + 1)}", $"{net}#{Number(i)}", [from[Math.Min(i, from.Length - 1)], to[Math.Min(i, to.Length - 1)]], text));
            }

            return;
        }

        parts.Link(wire, Link(run, run.Id, net, from.Length > 1 ? [.. to, .. from] : [.. from, .. to], label));
    }

    private WireLink Link(WiredRun run, string id, string net, ImmutableArray<string> ends, ImmutableArray<WordLine> label)
    {
        var mark = marked.Contains(run.Id) ? MarkWidth : 0;
        var width = label.IsEmpty ? 0 : label.Select((line, i) => TextSizes.Up(TextSizes.Width(line)) + LabelRoom(i, label.Length) + (i == 0 ? mark : 0)).Max() + 6;
        var height = label.IsEmpty ? 0 : (label.Length * 9) + 2;
        return new(id, run.Id, net, LabelWords.Kind(run.Kind), ends[0], ends[1..], width, height, Weights.Cased(LabelWords.Step(run)), run.Run.Through?.Value);
    }

    /// <summary>Room for the kind's letter, which stands before the second line, or the first if it is alone.</summary>
    internal static int LabelRoom(int line, int lines) => line == Math.Min(1, lines - 1) ? 11 : 0;

    private string Port(RunEnd end, WiredRun run, Parts parts, IReadOnlyDictionary<string, string> letters, Gear partner, string which)
    {
        if (!parts.Knows(end.Gear.Id))
        {
            var letter = letters.GetValueOrDefault(run.Id, "?");
            var id = $"to {letter} {run.Id} {which}";
            var reference = parts.AddReference(id, end.Gear, run.Id, letter);
            return reference.Port(id, "", TerminalWords.Side(end, IsBehind(partner, end.Gear)) is PortSide.Right ? PortSide.Right : PortSide.Left);
        }

        var device = parts.Add(end.Gear);
        var side = TerminalWords.Side(end, IsBehind(partner, end.Gear));
        // A bar has a stud for each run; elsewhere runs share the terminal.
        return end.Gear is BusBar
            ? device.Port($"{end.Id}.{Number(device.Ports.Count + 1)}", "", partner is ChassisPoint ? PortSide.Bottom : side)
            : device.Port(end.Id, TerminalWords.Name(end, run), side);
    }

    private bool IsBehind(Gear partner, Gear device) => ZoneRank(partner) > ZoneRank(device);

    private int ZoneRank(Gear gear) => gear.Zone is { } id ? Math.Max(0, wiring.Spec.Zones.ToList().FindIndex(z => z.Id == id)) : 0;

    private List<ZoneBox> Zones(Parts parts)
    {
        var used = parts.Devices.Select(d => d.Zone).ToHashSet(StringComparer.Ordinal);
        var zones = wiring.Spec.Zones.Where(z => used.Remove(z.Id)).Select(z => (z.Id, z.WallTowardsNext)).Concat(used.Order(StringComparer.Ordinal).Select(u => (u, false))).ToArray();
        return [.. zones.Select((z, i) => new ZoneBox(z.Item1, TextSizes.Up(FontMetrics.Width(z.Item1.ToUpperInvariant(), 7, FontWeight.SemiBold, 1)) + 16, z.Item2 && i < zones.Length - 1))];
    }

    private SheetDevice Text(Part part)
    {
        if (part.Gear is not { } gear)
        {
            return new(part.Id, null, Sign.Reference, [part.Letter ?? ""], [], [], [.. part.Ports.Select(p => p.Name)], false, []) { Reference = part.ReferenceTo };
        }

        if (part.Run is { } run)
        {
            var rating = run.Run.Protection?.Rating?.Words ?? run.Holder?.Rating?.Words ?? "";
            var distance = run.Run.Protection?.Distance is { } d ? $"{d.Words} from {Short(run.From[0])}" : "";
            return new(part.Id, gear, GearWords.Sign(gear), [rating], options.Audience == Audience.Technician && distance.Length > 0 ? [.. LineBreaker.Break(distance, 60, TextSizes.Body, most: 2)] : [],
                [], ["", ""], run.From[0].Gear.InVehicle && run.To[0].Gear.InVehicle, [gear.Id]);
        }

        var facts = ImmutableArray.CreateBuilder<WordLine>();
        if (options.Audience == Audience.Technician)
        {
            facts.AddRange(GearWords.Settings(gear).SelectMany(s => LineBreaker.Break(s, CaptionWidth, TextSizes.Body)).Take(4).Select(s => WordLine.Of(s, Tone.Quiet)));
            facts.AddRange(figures.Gear(gear).SelectMany(s => LineBreaker.Break(s, CaptionWidth, TextSizes.Body)).Select(s => WordLine.Of(s, Tone.Computed)));
        }

        var name = LineBreaker.Break(GearWords.Name(gear.Id), CaptionWidth, TextSizes.Name, FontWeight.SemiBold, 2);
        var captions = GearWords.Captions(gear, options.Audience).SelectMany(c => LineBreaker.Break(c, CaptionWidth, TextSizes.Body, most: 2)).Take(3).ToImmutableArray();
        return new(part.Id, gear, GearWords.Sign(gear), name, captions, facts.ToImmutable(), [.. part.Ports.Select(p => p.Name)], gear.InVehicle, [gear.Id]);
    }

    private static string Short(RunEnd end) => end.Gear.Id;

    private DeviceBox Box(Part part, SheetDevice text, int zone)
    {
        var mark = text.Subjects.Any(marked.Contains) ? MarkWidth : 0;
        var captions = text.Captions.Select(c => TextSizes.Up(FontMetrics.Width(c, TextSizes.Body))).DefaultIfEmpty(0).Max();
        var facts = text.Facts.Select(f => TextSizes.Up(TextSizes.Width(f))).DefaultIfEmpty(0).Max();
        var name = text.Name.Select(n => TextSizes.Up(FontMetrics.Width(n, TextSizes.Name, FontWeight.SemiBold))).DefaultIfEmpty(0).Max();
        var ports = part.Ports.Select(p => new PortBox(p.Id, p.Side, p.Name.Length == 0 ? 0 : TextSizes.Up(FontMetrics.Width(p.Name, TextSizes.Body)) + 4, part.Gear is Connector)).ToImmutableArray();
        var names = TextSizes.Up(TextSizes.NameLeading * text.Name.Length);
        var lines = TextSizes.Up(TextSizes.Leading * text.Captions.Length);
        var foot = text.Facts.IsEmpty ? 0 : TextSizes.Up(TextSizes.Leading * text.Facts.Length) + 3;
        return part switch
        {
            { Gear: null } => new(part.Id, zone, DeviceShape.Slim, Reference.Width, 0, 0, ports),
            { Run: not null } => new(part.Id, zone, DeviceShape.Holder, Math.Max(36, Math.Max(captions, TextSizes.Up(FontMetrics.Width(text.Name[0], TextSizes.Rating, FontWeight.SemiBold)) + mark) + 8), 11, lines + (lines > 0 ? 2 : 0), ports),
            { Gear: ChassisPoint } => new(part.Id, zone, DeviceShape.Chassis, 22 + Math.Max(name + mark, captions) + 2, names, lines + 2, ports),
            _ when IsSlim(part, text) => new(part.Id, zone, DeviceShape.Slim, SignWidth + 6 + Math.Max(name + mark, Math.Max(captions, facts)) + 6, 0, lines + foot + Below(part), ports, Group(part)),
            _ => new(part.Id, zone, DeviceShape.Box, Math.Max((text.Sign == Sign.None ? 6 : SignWidth + 6) + Math.Max(name + mark, captions), facts + 6) + 6, names + lines + 5, foot, ports, Group(part)),
        };
    }

    /// <summary>A line under a slim box for the name of its terminal.</summary>
    internal static int Below(Part part) => part.Ports.Any(p => p.Name.Length > 0) ? 9 : 0;

    private static bool IsSlim(Part part, SheetDevice text) => part.Ports.Count == 1 && text.Name.Length == 1 && part.Gear is Speaker or TapPoint or IgnitionSource or LevelControl;

    private static string? Group(Part part) => part.Gear?.Facts.Place?.Value;

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
}
