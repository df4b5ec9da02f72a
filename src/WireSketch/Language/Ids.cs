using WireSketch.Diagnostics;
using WireSketch.Syntax;

namespace WireSketch.Language;

/// <summary>What the user's own names may look like.</summary>
internal static class Ids
{
    private const int Longest = 60;

    /// <summary>A finding if a name cannot be used: names are printed on labels and joined with dots to name terminals.</summary>
    internal static Finding? Check(ScalarNode name, bool phrases)
    {
        var text = name.Value;
        var trouble = text switch
        {
            "" => "an empty name names nothing",
            _ when text.Length > Longest => $"this name has {text.Length} characters; a label holds {Longest}",
            _ when text.Contains('.', StringComparison.Ordinal) =>
                $"the name \"{text}\" has a dot in it, and dots part a device from its terminal",
            _ when !char.IsLetterOrDigit(text[0]) => $"the name \"{text}\" does not begin with a letter or digit",
            _ when text.Any(c => !(char.IsLetterOrDigit(c) || c is '-' or '_' || (phrases && c == ' ')) && !char.IsSurrogate(c)) =>
                $"the name \"{text}\" holds {(text.Contains(' ', StringComparison.Ordinal) ? "a blank" : "a character")} that names may "
                    + "not hold",
            _ => null,
        };
        if (trouble is null)
        {
            return null;
        }

        var better = new string([.. text.Select(c => char.IsLetterOrDigit(c) || c is '-' or '_' ? c : '-')]).Trim('-');
        return new("spec/id", Severity.Error, trouble, name.At)
        {
            Help = better.Length is > 0 and <= Longest
                ? $"use letters, digits and dashes, such as {better}"
                : "use letters, digits and dashes",
        };
    }
}
