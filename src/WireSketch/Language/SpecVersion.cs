using WireSketch.Diagnostics;
using WireSketch.Syntax;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>The version of the language that a file is written in.</summary>
internal static class SpecVersion
{
    /// <summary>The version that this program knows.</summary>
    public const int Known = 1;

    /// <summary>Reports a version that is missing, not first, or unknown. False if the file must not be read any further.</summary>
    internal static bool Check(SyntaxTree tree, SpecFindings findings)
    {
        var root = tree.Root;
        if (root.Entries.IsEmpty && !tree.Broken)
        {
            findings.Add(new(
                "spec/version", Severity.Error, "there is nothing in the file", tree.File.Start)
            {
                Help = "begin it with wiresketch: 1, then job:, gear: and runs:; wiresketch new writes one to begin with"
            });
            return false;
        }

        if (root.Find("wiresketch") is not { } entry)
        {
            if (!tree.Broken)
            {
                var start = new SourceSpan(tree.File, root.Entries.IsEmpty ? 0 : root.Entries[0].Key.At.Start, 0);
                findings.Add(new(
                    "spec/version",
                    Severity.Error,
                    "the file does not say which version of the language it is written in",
                    root.Entries.IsEmpty ? tree.File.Start : root.Entries[0].Key.At)
                {
                    Help = "begin it with wiresketch: 1",
                    Fixes = [new("begin with wiresketch: 1", [new(start, "wiresketch: 1\n\n")])],
                });
            }

            return true;
        }

        if (entry.Value.Meant is not ScalarNode { Value: "1" } version)
        {
            var at = entry.Value.At.Length > 0 && entry.Value.Meant is ScalarNode ? entry.Value.At : entry.Key.At;
            var isNumber = entry.Value.Meant is ScalarNode s && s.Value.Length is > 0 and < 10 && s.Value.All(char.IsAsciiDigit);
            findings.Add(new(
                "spec/version",
                Severity.Error,
                isNumber
                    ? $"the file is written in version {at.Words} of the language; this program knows version {Known}"
                    : "the version of the language is a whole number",
                at)
            {
                Help = isNumber ? "use a newer wiresketch, or write wiresketch: 1 and the file in that version" : "write wiresketch: 1",
            });
            return false;
        }

        if (!ReferenceEquals(root.Entries[0], entry) && !tree.Broken)
        {
            findings.Add(new(
                "spec/version",
                Severity.Error,
                "wiresketch: must be the first key of the file",
                entry.Key.At)
            { Help = "move this line to the top" });
        }

        return true;
    }
}
