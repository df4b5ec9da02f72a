using WireSketch.Drawing.Layout;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>The name written at a terminal and the side it is on.</summary>
internal static class TerminalLabels
{
    /// <summary>The name, without the device's; empty where the device has a single terminal.</summary>
    public static string Name(RunEnd end, WiredRun run, Wiring wiring)
    {
        var coils = end.Gear.SpeakerParts.OfType<VoiceCoil>().ToArray();
        if (coils.Length > 0)
        {
            return Coils(end, run, coils);
        }

        var name = end.Id.Length > end.Gear.Id.Length ? end.Id[(end.Gear.Id.Length + 1)..] : "";
        if (end.Gear.Joins.OfType<TerminalJoin>().FirstOrDefault(j => j.FuseMayStandAtRun && j.Second == end.Shape) is { } fuse)
        {
            var number = fuse.Suffix.TrimStart('.');
            // As written at the block; else as the run says or as it was chosen.
            var rating = fuse.Rating?.Words
                ?? (run.Holder is null
                    && wiring.Links.FirstOrDefault(l =>
                        l.Protects && ReferenceEquals(l.Gear, end.Gear) && l.B.Id == end.Id) is { Rating: { } amps }
                    ? Quantity.Print(amps)
                    : null);
            return rating is null ? number : $"{number} · {rating}";
        }

        name = name.Replace(".left", " L", StringComparison.Ordinal).Replace(".right", " R", StringComparison.Ordinal).Replace('.', ' ');
        name = name.EndsWith(" -", StringComparison.Ordinal) || name == "-" ? name[..^1] + "−" : name;
        return end.Shape.Form != TerminalForm.Group || end.Nodes.Length < 4 ? name
            : end.Shape.Members.Length == 2 ? $"{name} L+R".TrimStart()
            : $"{name} ×{end.Nodes.Length / 2}".TrimStart();
    }

    /// <summary>
    /// Supply and signal come in at the left and leave at the right, grounds leave below; what is neither faces its partner.
    /// </summary>
    public static PortSide Side(RunEnd end, bool partnerIsBehind) => (end.Gear.SideOf(end.Shape), end.Shape.Role, end.Shape.Flow) switch
    {
        (DrawnSide.Top, _, _) => PortSide.Top,
        (DrawnSide.Left, _, _) => PortSide.Left,
        (DrawnSide.Right, _, _) => PortSide.Right,
        (DrawnSide.FacingPartner, _, _) => partnerIsBehind ? PortSide.Right : PortSide.Left,
        (_, TerminalRole.Ground, _) => PortSide.Bottom,
        (_, _, TerminalFlow.In) => PortSide.Left,
        (_, _, TerminalFlow.Out) => PortSide.Right,
        _ => partnerIsBehind ? PortSide.Right : PortSide.Left,
    };

    /// <summary>
    /// Left and right are the same to what only stores, shares or breaks supply, and to loads; what handles signals keeps its
    /// inputs at the left (common practice, no published source).
    /// </summary>
    public static bool HasFreeSides(Gear? gear) => gear?.Drawing.HasFreeSides ?? false;

    private static string Coils(RunEnd end, WiredRun run, VoiceCoil[] all)
    {
        var speaker = end.Gear;
        if (end.Nodes.Length == 1)
        {
            var sign = end.Nodes[0].Side == '-' ? "−" : "+";
            var name = end.Id.Length > speaker.Id.Length ? end.Id[(speaker.Id.Length + 1)..].TrimEnd('+', '-', '.').Replace('.', ' ') : "";
            return all.Length > 1 && name.Length > 0 ? $"{name} {sign}" : sign;
        }

        var each = Quantity.Print(all[0].Speaker.CoilImpedance).Replace("ohm", "Ω", StringComparison.Ordinal);
        var coils = end.Nodes.Length / 2;
        if (coils > 1)
        {
            return $"{coils} × {each} {HookupWays.Words[run.Run.Hookup?.Coils ?? HookupWay.Parallel]}";
        }

        return all.Length > 1 ? $"{end.Id[(speaker.Id.Length + 1)..].Replace('.', ' ')} · {each}" : each;
    }
}
