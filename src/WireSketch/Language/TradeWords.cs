using System.Collections.Immutable;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>
/// What installers say for words of the language. None of them is accepted in its place: a message names the word that is.
/// Common practice of the trade, no published source.
/// </summary>
internal static class TradeWords
{
    private static readonly ImmutableArray<(string Word, string Said)> Kinds =
    [
        ("level adapter", "line output converter, LOC, line out converter, high to low, hi-low converter, speaker level converter"),
        ("processor", "DSP, signal processor, digital signal processor, equalizer, EQ"),
        ("amplifier", "amp, power amp, amplifer"),
        ("subwoofer", "sub, woofer, bass speaker"),
        ("head unit", "radio, stereo, receiver, deck, car radio, source unit, HU"),
        ("level control", "bass knob, bass remote, remote knob"),
        ("passive crossover", "crossover, x-over, xover"),
        ("chassis point", "ground, ground point, chassis, chassis ground, body ground, earth, earth point, gnd, ground stud"),
        ("distribution block", "distro block, distro, power distribution block, splitter"),
        ("bus bar", "busbar, bus"),
        ("fuse block", "fuse box, fuse panel, fused distribution block"),
        ("breaker", "circuit breaker"),
        ("capacitor", "cap, stiffening cap"),
        ("lamp", "light, bulb, LED, light bar"),
        ("fridge", "refrigerator, cooler"),
        ("speaker", "tweeter, midrange, coaxial, loudspeaker, component"),
        ("isolator", "battery isolator, split charge relay, VSR"),
        ("load resistor", "dummy load, resistor"),
        ("ignition source", "ACC, IGN, ignition, switched 12V, accessory wire"),
        ("connector", "plug, harness plug"),
    ];

    private static readonly ImmutableArray<(string Word, string Said)> Terminals =
    [
        ("+", "B+, 12V+, +12V, 12V, 24V+, hot, pos, positive, plus, power, batt, BATT+, VCC, live"),
        ("-", "gnd, ground, earth, neg, negative, minus, B-, GRD, chassis, −, –, —, --"),
        ("remote", "rem, remote turn-on, turn-on, REM IN, amp turn-on, trigger"),
        ("remote-in", "remote, rem, rem-in, turn-on"),
        ("remote-out", "rem-out, remote out, amp turn-on, blue/white"),
        ("in", "input, RCA, inputs, line in"),
        ("out", "output, outputs, line out, preout"),
    ];

    private static readonly ImmutableArray<(string Word, string Said)> Wires =
        [("line pair", "phono cable, phono, interconnect, RCA, RCA cable, RCAs, patch cable, signal cable")];

    private static readonly ImmutableArray<(string Word, string Said)> Values =
        [("vented", "ported, reflex, bass reflex"), ("sealed", "closed, closed box"), ("free air", "infinite baffle, IB")];

    private static readonly ImmutableArray<(string Word, string Said)> Keys =
    [
        ("wire", "gauge, cable, awg, size, wire size"), ("handles", "watts, rms, wattage, power handling, power"),
        ("gear", "devices, equipment, components, products"), ("runs", "cables, wiring, connections"), ("is", "type, kind, what"),
        ("coils", "impedance, ohms, voice coils, load"), ("length", "distance, long"), ("through", "grommet"), ("fuse", "fused"),
    ];

    /// <summary>The kind that somebody means; null if nothing is near.</summary>
    internal static string? Kind(string written, IEnumerable<string> known) => Meant(Kinds, written, known) ?? Nearest.To(written, known);

    /// <summary>The terminal that somebody means; null if nothing is near.</summary>
    internal static string? Terminal(string written, IReadOnlyCollection<string> known) =>
        Meant(Terminals, written, known) ?? Nearest.To(written, known);

    /// <summary>The word for a ready cable that somebody means; null if there is none.</summary>
    internal static string? Wire(string written) => Meant(Wires, written, ["line pair"]);

    /// <summary>The value that somebody means; null if nothing is near.</summary>
    internal static string? Value(string written, IReadOnlyCollection<string> known) =>
        Meant(Values, written, known) ?? Nearest.To(written, known);

    /// <summary>The key that somebody means; null if nothing is near.</summary>
    internal static string? Key(string written, IReadOnlyCollection<string> known) =>
        Meant(Keys, written, known) ?? Nearest.To(written, known);

    /// <summary>Whether a word is what installers say for the body of the vehicle.</summary>
    internal static bool IsBody(string written) =>
        Meant(Kinds, written, ["chassis point"]) is not null || Plain(written) is "body" or "frame" or "vehicle";

    private static string? Meant(ImmutableArray<(string Word, string Said)> table, string written, IEnumerable<string> known)
    {
        var plain = Plain(written);
        var words = known.ToHashSet(StringComparer.Ordinal);
        return table.Where(t => words.Contains(t.Word) && t.Said.Split(", ").Any(s => Plain(s) == plain))
            .Select(t => t.Word)
            .FirstOrDefault();
    }

    /// <summary>Without capitals, dashes and underscores between words; a dash at the end is a sign.</summary>
    private static string Plain(string words)
    {
        var plain = words.Trim().ToLowerInvariant();
        return string.Concat(plain.Select((c, i) => c is '-' or '_' && i > 0 && i + 1 < plain.Length ? ' ' : c));
    }
}
