using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Layout;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>
/// Makes the overview of a large system: the devices that others hang on, the rest as groups with their number, and a line with a
/// count where wires join two of them. Grounds to the body are left to their own sheet.
/// </summary>
internal static class OverviewMaker
{
    /// <summary>The last step of coarseness.</summary>
    public const int Coarsest = 2;

    /// <summary>Makes the overview.</summary>
    /// <param name="wiring">The system.</param>
    /// <param name="audience">For whom.</param>
    /// <param name="coarseness">0: important devices by themselves; 1: every zone's gear by kind; 2: by what it is for.</param>
    /// <param name="markRoom">Room that the marks of findings take at a device or a group of them.</param>
    public static Sheet Make(Wiring wiring, Audience audience, int coarseness, Func<ImmutableArray<string>, int> markRoom)
    {
        var gear = wiring.Gear.Where(g => !IsGround(g) && !wiring.Runs.Any(r => ReferenceEquals(r.Holder, g))).ToImmutableArray();
        var nodes = Group(gear, g => coarseness switch
        {
            0 => IsHost(g) ? g.Id : g.Zone + "/" + g.Kind,
            1 => g.Zone + "/" + g.Kind,
            _ => g.Zone + "/" + Family(g),
        });
        return new Builder(wiring, nodes, audience, markRoom).Build();
    }

    private static ImmutableArray<Gear>[] Group(ImmutableArray<Gear> gear, Func<Gear, string> key) =>
        [.. gear.GroupBy(key, StringComparer.Ordinal).Select(g => g.ToImmutableArray())];

    private static bool IsHost(Gear gear) => gear.Drawing.IsHub;

    /// <summary>A point on the body, or a bar that only gathers grounds.</summary>
    private static bool IsGround(Gear gear) =>
        gear.Drawing.Form is DrawnForm.GroundPoint or DrawnForm.Bar && gear.Terminals.All(t => t.Role == TerminalRole.Ground);

    private static string Family(Gear gear) => gear.Drawing.Family switch
    {
        DeviceFamily.Source => "source",
        DeviceFamily.SoundDevice => "sound device",
        DeviceFamily.Speaker => "speaker",
        DeviceFamily.Load => "load",
        _ => "joint or switch",
    };

    private sealed class Builder(Wiring wiring, ImmutableArray<Gear>[] nodes, Audience audience, Func<ImmutableArray<string>, int> markRoom)
    {
        private const int Width = 80;
        private const int MostLines = 4;
        private readonly SheetGroups parts = new();
        private readonly Dictionary<string, (SheetGroup Part, ImmutableArray<Gear> Gear)> partOf = new(StringComparer.Ordinal);

        public Sheet Build()
        {
            foreach (var node in nodes)
            {
                var part = parts.Add(node[0]);
                foreach (var gear in node)
                {
                    partOf[gear.Id] = (part, node);
                }
            }

            var joints = wiring.Runs.Where(r => r.Kind != RunKind.Ground)
                .SelectMany(r => r.To.Select(t => (From: Find(r.From[0].Gear), To: Find(t.Gear), Run: r)))
                .Where(j => j.From is not null && j.To is not null && !ReferenceEquals(j.From, j.To))
                .GroupBy(j => (From: j.From!.Id, To: j.To!.Id)).ToArray();
            for (var i = 0; i < joints.Length; i++)
            {
                Join(
                    string.Create(CultureInfo.InvariantCulture, $"bundle-{i + 1}"),
                    joints[i].First().From!,
                    joints[i].First().To!,
                    [.. joints[i].Select(j => j.Run).Distinct()]);
            }

            var zones = wiring.Spec.Zones.Where(z => parts.Devices.Any(d => d.Zone == z.Id))
                .Select(z => (z.Id, z.WallTowardsNext))
                .ToList();
            zones.AddRange(parts.Devices.Select(d => d.Zone)
                .Distinct()
                .Where(z => !zones.Any(k => k.Id == z))
                .Select(z => (z, false))
                .ToArray());
            var boxes = zones.Select((z, i) =>
                new ZoneBox(
                    z.Id,
                    TextSizes.Up(FontMetrics.Width(z.Id.ToUpperInvariant(), 7, FontWeight.SemiBold, 1)) + 16,
                    z.WallTowardsNext && i < zones.Count - 1));
            var texts = parts.Devices.Select(Text).ToImmutableArray();
            var devices = parts.Devices.Select((d, i) => Box(d, texts[i], zones.FindIndex(z => z.Id == d.Zone)));
            return new(
                SheetKind.Overview,
                "Overview",
                new([.. boxes], [.. devices], [.. parts.Links]),
                texts,
                [.. parts.Wires],
                LabelForm.Narrow);
        }

        private SheetGroup? Find(Gear gear) => partOf.TryGetValue(gear.Id, out var found) ? found.Part : null;

        private void Join(string id, SheetGroup from, SheetGroup to, ImmutableArray<WiredRun> runs)
        {
            var kinds = runs.GroupBy(r => r.Kind).OrderBy(g => g.Key).ToArray();
            var label = kinds.Select(k =>
                new TextLine([
                    new(k.Count() == 1 ? k.First().Id : k.Count().ToString(CultureInfo.InvariantCulture), TextEmphasis.Strong),
                    new(" " + (audience == Audience.Customer ? LabelText.Plain(k.Key) : LabelText.Kind(k.Key)))
                ]))
                .ToImmutableArray();
            var (a, b) = (from.Port($"{from.Id}.{id}.out", "", PortSide.Right), to.Port($"{to.Id}.{id}.in", "", PortSide.Left));
            var step = runs.Length > 3 ? 4 : runs.Length > 1 ? 3 : 2;
            var spoken = $"{string.Join(", ", label.Select(l => string.Concat(l.Parts.Select(p => p.Text))))}: "
                + $"{string.Join(", ", runs.Select(r => r.Id))}";
            var wire = new SheetWire(
                id, kinds[0].Key, [a], [b], step, [], label, spoken)
            { IsBundle = true, LabelKinds = [.. kinds.Select(k => k.Key)] };
            var width = label.Select((l, i) => TextSizes.Up(TextSizes.Width(l)) + SheetMaker.KindRoom).Max() + SheetMaker.ChipPadding;
            parts.Link(
                wire,
                new(id, id, id, LabelText.Kind(kinds[0].Key), a, [b], width, (label.Length * 9) + 2, StrokeWidths.Cased(step)));
        }

        private SheetDevice Text(SheetGroup part)
        {
            var group = partOf[part.Id].Gear;
            var kinds = group.Select(g => g.Kind).Distinct().ToArray();
            var name = group.Length == 1 ? group[0].DisplayName
                : kinds.Length == 1 ? string.Create(CultureInfo.InvariantCulture, $"{group.Length} {Many(kinds[0])}")
                : string.Create(CultureInfo.InvariantCulture, $"{group.Length} {Many(Family(group[0]))}");
            var caption = group.Length == 1
                ? DeviceLabels.Captions(group[0], group[0].Drawing.PlugsIn ? Audience.Technician : Audience.Customer)
                    .Take(1)
                    .SelectMany(c => LineBreaker.Break(c, Width, TextSizes.Body, most: 2))
                : Names(group);
            return new(
                part.Id,
                group.Length == 1 ? group[0] : null,
                group[0].Drawing.Symbol,
                LineBreaker.Break(name, Width, TextSizes.Name, FontWeight.SemiBold, 2),
                [.. caption],
                [], [.. part.Ports.Select(_ => "")], group.All(g => g.InVehicle), [.. group.Select(g => g.Id)]);
        }

        /// <summary>As many names as fit, and how many more there are.</summary>
        private static ImmutableArray<string> Names(ImmutableArray<Gear> group)
        {
            for (var shown = group.Length; shown > 0; shown--)
            {
                var more = shown < group.Length ? string.Create(CultureInfo.InvariantCulture, $" and {group.Length - shown} more") : "";
                var lines = LineBreaker.Break(string.Join(", ", group.Take(shown).Select(g => g.Id)) + more, Width, TextSizes.Body);
                if (lines.Length <= MostLines)
                {
                    return lines;
                }
            }

            return [];
        }

        private DeviceBox Box(SheetGroup part, SheetDevice text, int zone)
        {
            var name = text.Name.Select(n => TextSizes.Up(FontMetrics.Width(n, TextSizes.Name, FontWeight.SemiBold))).Max();
            var captions = text.Captions.Select(c => TextSizes.Up(FontMetrics.Width(c, TextSizes.Body))).DefaultIfEmpty(0).Max();
            var header = SheetMaker.HeadHeight(text) + TextSizes.Up(TextSizes.Leading * text.Captions.Length) + 5;
            return new(
                part.Id,
                zone,
                DeviceShape.Box,
                12 + Math.Max(19 + name + markRoom(text.Subjects), captions),
                header,
                0,
                [.. part.Ports.Select(p => new PortBox(p.Id, p.Side, 0, Free: TerminalLabels.HasFreeSides(partOf[part.Id].Gear[0])))]);
        }

        private static string Many(string kind) => kind == "joint or switch" ? "joints and switches"
            : kind.EndsWith("ch", StringComparison.Ordinal) ? kind + "es"
            : kind.EndsWith("battery", StringComparison.Ordinal) ? "batteries" : kind + "s";
    }
}
