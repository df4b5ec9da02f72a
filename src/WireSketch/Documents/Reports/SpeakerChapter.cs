using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Documents.Reports;

/// <summary>Loads of the channels, and where their power goes.</summary>
internal static class SpeakerChapter
{
    private const string Network = "coils, crossovers and wires solved as they are joined";

    public static Chapter Of(InstalledSystem install) => new(
        "speakers", "Loads and power of the channels",
        [
            "Load: coils, crossovers and wires as they are joined, solved as a network (nodal analysis); coils are resistances of their "
                + "nominal value. Where a crossover is in it: the lowest of the third-octave bands (IEC 61260-1). Each half of a bridge "
                + "sees half the load.",
            "Output: the square of its volts lies in proportion between the loads that the power table states; above the highest of "
                + "them its volts stay, below the lowest its current does. P = U²/Z.",
            "Target for setting the gain: the volts at which neither the channel gives more than it can nor any coil takes more than "
                + "its share of what the driver handles.",
        ],
        [],
        [.. install.Answers.Channels.SelectMany(c => Coils(c).Prepend(Of(c)))]);

    private static Calculation Of(ChannelResult c)
    {
        var w = new ReportBuilder().Each(
            "Z_c",
            "coils on it, one by one",
            c.Coils.Select(k => (Name(k), k.Speaker.CoilImpedance)),
            CoilOrigins(c))
            .Solved("Z_n", "load, coils alone", c.Nominal, Network).Solved("Z", "load with its wires", c.Loaded, Network);
        if (c.BridgedWith is not null && c.Nominal is not null)
        {
            w.Gives("Z_h", "each half sees", c.PerHalf!.Value, "Z_n/2");
        }

        w.Told("least allowed", c.Minimum?.ToString() ?? "unknown", MinimumOrigin(c));
        if (c.Fault != LoadFault.None)
        {
            return w.Says("fault", Fault(c.Fault), "the wiring").Of(Subject(c));
        }

        if (c is { Volts: { } volts, Loaded: { } load, Power: { } power })
        {
            Output(w, c, volts, load);
            w.Gives("P", "output", power, "U²/Z")
                .Each("P_c", "in its coils", c.Coils.Where(k => k.Power is not null).Select(k => (Name(k), k.Power!.Value)), Network)
                .Each(
                    "H",
                    "the driver's share that a coil takes",
                    c.Coils.Where(k => k.Handles is not null).Select(k => (Name(k), k.Handles!.Value)),
                    "handles of its driver over its coils");
            if (c.TargetVolts is { } target)
            {
                var share = c.Coils.Where(k => k is { Power.Value: > 0, Handles: not null })
                    .Select(k => k.Handles!.Value.Value / k.Power!.Value.Value)
                    .DefaultIfEmpty(1)
                    .Min();
                w.Number("s", "least of H/P_c over the coils, 1 at the most", Math.Min(1, share), "this row")
                    .Gives("U_t", "target for the gain", target, "U·√(s)");
            }
        }

        if (c.Meter is { } meter)
        {
            w.Solved<Ohms>("R_m", "an ohm meter shows", meter, "the same network with the dc-resistance of every coil");
        }

        return w.Solved<Decibels>("loss", "level lost in the wires", c.WireLoss, Network).Of(Subject(c));
    }

    /// <summary>The volts of the output, by the part of the power table that its load falls into.</summary>
    private static void Output(ReportBuilder w, ChannelResult c, Volts volts, Ohms load)
    {
        var (points, note) = Table(c);
        if (points.IsEmpty)
        {
            w.Taken("U", "volts at the output", volts, c.Output.Amplifies is null ? SourceOrigin(c) : "the wiring");
            return;
        }

        var (first, last) = (points[0], points[^1]);
        if (load >= last.Load)
        {
            Point(w, "b", last, note).Gives("U", "volts at the output", volts, "√(P_b·Z_b)");
        }
        else if (load <= first.Load)
        {
            Point(w, "a", first, note).Gives("U", "volts at the output", volts, "Z·√(P_a/Z_a)");
        }
        else
        {
            var i = points.ToList().FindIndex(p => p.Load > load);
            Point(Point(w, "a", points[i - 1], note), "b", points[i], note)
                .Gives("U", "volts at the output", volts, "√(Z_a·P_a + (Z − Z_a)/(Z_b − Z_a)·(Z_b·P_b − Z_a·P_a))");
        }
    }

    private static ReportBuilder Point(ReportBuilder w, string letter, (Ohms Load, Watts Power, string Origin) point, string note) =>
        w.Taken("Z_" + letter, "stated load", point.Load, point.Origin + note)
            .Taken("P_" + letter, "power stated for it", point.Power, point.Origin + note);

    /// <summary>
    /// The power table that holds, lowest load first; of a bridge without its own, twice the half's power at twice the load.
    /// </summary>
    private static (ImmutableArray<(Ohms Load, Watts Power, string Origin)> Points, string Note) Table(ChannelResult c)
    {
        if (c.Output.Amplifies is not { } channel)
        {
            return ([], "");
        }

        var doubled = c.BridgedWith is not null && channel.Bridged.IsEmpty;
        var table = c.BridgedWith is null || doubled ? channel.Power : channel.Bridged;
        var times = doubled ? 2 : 1;
        return (
            [
                .. table.Where(p => p.Key.Value.Value > 0 && p.Value.Value.Value > 0)
                    .Select(p => (Load: times * p.Key.Value, Power: times * p.Value.Value, Origin: ReportBuilder.Place(p.Value.At)))
                    .OrderBy(p => p.Load)
                    .DistinctBy(p => p.Load)
            ],
            doubled ? ", a half's, doubled" : "");
    }

    private static IEnumerable<Calculation> Coils(ChannelResult c) =>
        c.Fault != LoadFault.None ? [] : c.Coils.Where(k => k is { Power: not null, Handles: not null }).Select(k => new ReportBuilder()
            .Taken("P_c", "power in the coil", k.Power!.Value, $"{Network}, at the output of {c.Id}")
            .Given("P_h", "the driver handles", k.Speaker.Handles!.Value)
            .Number("n", "its coils", k.Speaker.CoilCount, CoilOrigin(k))
            .Gives("H", "the coil's share", k.Handles!.Value, "P_h/n")
            .Gives("u", "used", new Share(k.Power.Value / k.Handles.Value), "P_c/H")
            .Says("moves", k.IsOpen ? "not at all: open" : k.IsReversed ? "against the signal" : "with the signal", "the wiring")
            .Of(Name(k)));

    private static string Subject(ChannelResult c) => c.BridgedWith is { } other ? $"{c.Id} bridged with {other}" : c.Id;

    private static string Name(CoilResult k) => string.Create(CultureInfo.InvariantCulture, $"{k.Speaker.Id}.coil.{k.Coil}");

    private static string CoilOrigins(ChannelResult c) =>
        c.Coils.IsEmpty ? "the wiring: no coil, what else loads it" : string.Join(", ", c.Coils.Select(CoilOrigin).Distinct());

    private static string CoilOrigin(CoilResult k) => k.Speaker.Coils is { } w ? ReportBuilder.Place(w.At) : "default: one coil of 4 ohm";

    private static string SourceOrigin(ChannelResult c) =>
        c.Output.Maximum is { } m ? $"{ReportBuilder.Place(m.At)}, its highest" : "the spec";

    private static string MinimumOrigin(ChannelResult c)
    {
        var channel = c.Output.Amplifies;
        var written = c.BridgedWith is null ? channel?.Minimum : channel?.BridgedMinimum;
        return written is { } w ? ReportBuilder.Place(w.At)
            : c.Minimum is null ? "nobody says"
            : c.BridgedWith is null ? "default: the lowest load in its power"
            : "default: twice the minimum of its halves";
    }

    private static string Fault(LoadFault fault) => fault switch
    {
        LoadFault.Shorted => "shorted",
        LoadFault.TiedToOutput => "tied to another output",
        LoadFault.Grounded => "a side is on the body",
        _ => "open",
    };
}
