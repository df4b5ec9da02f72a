using System.Globalization;
using WireSketch.Diagnostics;

namespace WireSketch.Testing;

/// <summary>
/// Findings as they are expected in a text: <c>#! group/slug</c> at the end of the line at which the finding points, several
/// ids separated by spaces. A mark and a finding are compared as "line id".
/// </summary>
public static class Marks
{
    private const string Sign = "#! ";

    /// <summary>The marks in a text, in order.</summary>
    public static string[] In(string text)
    {
        var marks = new List<string>();
        var lines = text.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var at = lines[i].IndexOf(Sign, StringComparison.Ordinal);
            if (at >= 0)
            {
                marks.AddRange(lines[i][(at + Sign.Length)..].Split(
                    ' ',
                    StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
                    .Select(id => Mark(i + 1, id)));
            }
        }

        return [.. marks.Order(StringComparer.Ordinal)];
    }

    /// <summary>
    /// What findings amount to in marks: every error and warning that nobody accepted, and of the advices those that
    /// <paramref name="expected"/> names.
    /// </summary>
    public static string[] Of(IEnumerable<Finding> findings, IReadOnlyCollection<string> expected) =>
        [.. findings
            .Where(f => f.AcceptedBecause is null)
            .Select(f => (f.Severity, Mark: Mark(f.At.Line, f.Rule)))
            .Where(f => f.Severity != Severity.Advice || expected.Contains(f.Mark))
            .Select(f => f.Mark)
            .Order(StringComparer.Ordinal)];

    private static string Mark(int line, string id) => string.Create(CultureInfo.InvariantCulture, $"{line:000} {id}");
}
