using System.Collections.Immutable;
using WireSketch.Text;

namespace WireSketch.Papers.Findings;

/// <summary>What is to be said about a finding of the language itself: the spec was not understood, so no rule could look at it.</summary>
/// <param name="Id">Stable id, <c>spec/slug</c>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Title">What is wrong, in a short sentence.</param>
/// <param name="Why">Why it matters, and what usually mends it.</param>
public sealed record LanguageCard(string Id, Severity Severity, string Title, string Why)
{
    public static ImmutableArray<LanguageCard> All { get; } =
    [
        new("spec/syntax", Severity.Error, "The text is not in the form of a spec",
            "A spec is YAML: keys with values, indented by spaces. Where that form is broken, the rest of the entry cannot be read. The usual causes are a missing space after a colon, a bracket that is not closed, a tab, or words with a colon inside that need quotes."),
        new("spec/version", Severity.Error, "The version of the language is missing or unknown",
            "The first key says which version of the language the spec is written in, so that a later program still reads it as it was meant. Write wiresketch: 1."),
        new("spec/unknown-key", Severity.Error, "A key is not in the language",
            "Nothing in a spec is silently ignored: a mistyped key would leave out what you meant to say. The nearest known key is named."),
        new("spec/unknown-kind", Severity.Error, "There is no such kind of gear",
            "The word after is: decides which terminals a device has. The kinds are listed in the reference of keys."),
        new("spec/duplicate-key", Severity.Error, "A key or id stands twice",
            "Only one of the two could be meant. Delete one, or give the second its own id."),
        new("spec/id", Severity.Error, "An id cannot be used",
            "Ids are printed on labels and joined to the names of terminals with points. Letters, digits, hyphens and underscores are safe."),
        new("spec/missing", Severity.Error, "Something that is needed is not given",
            "Without it the install cannot be computed, and a guess would look like a fact on the drawing."),
        new("spec/reference", Severity.Error, "A name is used that nothing has",
            "Gear, terminals, parts, wire types, zones and paths are named by their ids. The nearest known name is given, and for a terminal all that the device has."),
        new("spec/type", Severity.Error, "A value has the wrong form",
            "A list stands where a single value belongs, or the reverse; or a word where true or false belongs."),
        new("spec/unit", Severity.Error, "A unit is missing or does not fit",
            "Every quantity is written with its unit, as people write it: 4 AWG, 17 ft, 60 A. Without it nobody can tell feet from metres."),
        new("spec/value", Severity.Error, "A value cannot be right",
            "It is not one of the words that fit here, or it contradicts another value."),
        new("spec/use", Severity.Error, "A file that the spec names cannot be used",
            "Files named under use: lie in the spec's own folder or in a folder named with --root, and hold only parts, wires and zones."),
        new("spec/ends-differ", Severity.Error, "The two ends of a run do not match",
            "Conductors are joined one to one. Name single channels or sides, or give both ends the same number of channels."),
        new("spec/hookup-missing", Severity.Error, "A run to several coils does not say how they are joined",
            "Two 4 ohm coils make 8 ohm in series and 2 ohm in parallel: one may be half the power, the other the end of the amplifier. Add hookup: to the run."),
    ];
}
