using System.Collections.Immutable;

namespace WireSketch.Language;

/// <summary>What is to be said about a finding of the language itself. All of them are errors.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Title">What is wrong, in a short sentence.</param>
/// <param name="Why">Why it cannot stand, and what usually mends it.</param>
/// <param name="Bad">A spec without its heading that has it; each expected finding is marked <c>#! id</c> on its line.</param>
/// <param name="Good">The same, mended.</param>
internal sealed record LanguageFinding(string Id, string Title, string Why, string Bad, string Good);

/// <summary>All findings of the language: those of reading a spec, and of joining its runs to its terminals.</summary>
internal static class LanguageFindings
{
    public static ImmutableArray<LanguageFinding> All { get; } =
    [
        new(
            "spec/syntax",
            "The text cannot be read",
            "A spec is YAML: key: value, two spaces deeper for what belongs below, commas between entries within brackets. Only the "
                + "entry that holds the slip is left out; everything else is read and checked, so all slips show in one run.",
            """
            gear:
              lamp: { is: lamp, power: 10 W, #! spec/syntax
              battery: { is: battery }
            """,
            """
            gear:
              lamp: { is: lamp, power: 10 W }
              battery: { is: battery }
            """),
        new(
            "spec/version",
            "The version of the language is missing or unknown",
            "The first line says which version of the language a file is written in, so that it still means the same when the language "
                + "has grown. A file of a newer version is not read by guesswork.",
            """
            job: { title: Lamp }
            wiresketch: 1 #! spec/version
            """,
            """
            wiresketch: 1
            job: { title: Lamp }
            """),
        new(
            "spec/unknown-key",
            "The key is not known here",
            "A key with a typing error would otherwise be ignored in silence, and a fuse or a length with it. Each place has its own "
                + "keys; the reference page lists them.",
            """
            gear:
              sub: { is: subwoofer, handels: 400 W } #! spec/unknown-key
            """,
            """
            gear:
              sub: { is: subwoofer, handles: 400 W }
            """),
        new(
            "spec/duplicate-key",
            "The same key is written twice",
            "One of the two values would win without anybody knowing which. Keep one, or give one another name.",
            """
            gear:
              lamp: { is: lamp, power: 10 W }
              lamp: { is: lamp, power: 21 W } #! spec/duplicate-key
            """,
            """
            gear:
              left-lamp: { is: lamp, power: 10 W }
              right-lamp: { is: lamp, power: 21 W }
            """),
        new(
            "spec/unknown-kind",
            "There is no such kind of gear",
            "The kind decides which terminals a device has and how it is computed. What fits no kind is a general load, a general "
                + "source, a switch or a connector.",
            """
            gear:
              sub: { is: subwofer } #! spec/unknown-kind
            """,
            """
            gear:
              sub: { is: subwoofer }
            """),
        new(
            "spec/unit",
            "The unit is missing or does not fit",
            "17 may be feet or meters, and a fuse of 60 V is none: the difference can burn a car. Every quantity is written with its "
                + "unit, US or metric as you like.",
            """
            gear:
              fuse: { is: fuse, rating: 60 } #! spec/unit
            """,
            """
            gear:
              fuse: { is: fuse, rating: 60 A }
            """),
        new(
            "spec/value",
            "The value makes no sense here",
            "A word that is not one of those the key takes, a length of less than nothing, yes where true or false is meant: whatever "
                + "was meant, computing with it would be guessing.",
            """
            gear:
              lamp: { is: lamp, power: 10 W, always-live: yes } #! spec/value
            """,
            """
            gear:
              lamp: { is: lamp, power: 10 W, always-live: true }
            """),
        new(
            "spec/type",
            "A map, a list or a single value stands where another of them belongs",
            "gear and runs are maps of names, readings and accept are lists behind dashes, a length is a single value. The message says "
                + "which one belongs here.",
            """
            accept: { rule: ground/long, at: G1, because: measured } #! spec/type
            """,
            """
            accept:
              - { rule: ground/long, at: G1, because: measured }
            """),
        new(
            "spec/missing",
            "A key is missing that must be there",
            "What can be computed or has a usual value may be left out. This cannot: without it the entry means nothing.",
            """
            gear:
              lamp: { is: lamp } #! spec/missing
            """,
            """
            gear:
              lamp: { is: lamp, power: 10 W }
            """),
        new(
            "spec/reference",
            "A name names nothing",
            "Zones, parts, wire types, paths, devices and terminals are named in one place and used in others. Either the name is "
                + "mistyped, or what it names was renamed or never declared.",
            """
            gear:
              lamp: { is: lamp, power: 10 W, zone: cabbin } #! spec/reference
            """,
            """
            gear:
              lamp: { is: lamp, power: 10 W, zone: cabin }
            """),
        new(
            "spec/id",
            "The name cannot be used",
            "Names are printed on labels and joined with dots to name terminals, so they are made of letters, digits and dashes, and "
                + "name one thing only.",
            """
            gear:
              front.lamp: { is: lamp, power: 10 W } #! spec/id
            """,
            """
            gear:
              front-lamp: { is: lamp, power: 10 W }
            """),
        new(
            "spec/use",
            "A file named under use cannot be used",
            "Such a file holds parts, wires and zones that several specs share, and nothing else. Its path is given as seen from the "
                + "file that names it.",
            """
            use: [parts/none-such.yaml] #! spec/use
            gear:
              lamp: { is: lamp, power: 10 W }
            """,
            """
            parts:
              small-lamp: { is: lamp, power: 10 W }
            gear:
              lamp: { part: small-lamp }
            """),
        new(
            "spec/file",
            "A file of measured levels cannot be read",
            "A response may name a file with its levels instead of writing them: a line for each band, frequency and level. Its path is "
                + "given as seen from the spec.",
            """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
            response:
              - { at: radio.front, volume: 20, csv: none-such.csv } #! spec/file
            """,
            """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
            response:
              - { at: radio.front, volume: 20, levels: { 63 Hz: -1 dB, 125 Hz: 0 dB, 1000 Hz: 0 dB } }
            """),
        new(
            "spec/ends-differ",
            "The two ends of a run do not have the same conductors",
            "A pair joins a pair, a group of channels joins a group of as many. Otherwise nobody can say which conductor goes where.",
            """
            gear:
              radio: { is: head unit, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, channels: { a: { power: { 4 ohm: 50 W } }, b: { power: { 4 ohm: 50 W } }, c: { power: { 4 ohm: 50 W } } } }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 3 ft } #! spec/ends-differ
            """,
            """
            gear:
              radio: { is: head unit, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, channels: { a: { power: { 4 ohm: 50 W } }, b: { power: { 4 ohm: 50 W } } } }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 3 ft }
            """),
        new(
            "spec/hookup-missing",
            "A run to several coils does not say how they are joined",
            "Two coils of 4 ohm are 8 ohm in series and 2 ohm in parallel: the amplifier sees one or the other, and one of them may "
                + "break it.",
            """
            gear:
              amp: { is: amplifier, channels: { sub: { power: { 4 ohm: 250 W } } } }
              sub: { is: subwoofer, coils: 2 x 2 ohm }
            runs:
              S1: { from: amp.sub, to: sub.coils, wire: 12 AWG, length: 9 ft } #! spec/hookup-missing
            """,
            """
            gear:
              amp: { is: amplifier, channels: { sub: { power: { 4 ohm: 250 W } } } }
              sub: { is: subwoofer, coils: 2 x 2 ohm }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: series, wire: 12 AWG, length: 9 ft }
            """),
    ];

    /// <summary>The finding of an id; null if the language has none of that name.</summary>
    public static LanguageFinding? Of(string id) => All.FirstOrDefault(f => f.Id == id);
}
