using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Documents.Findings;

/// <summary>Findings about one or several specs, and by which names the files go.</summary>
/// <param name="Specs">Names of the specs that were checked.</param>
/// <param name="All">In the order in which they are shown.</param>
/// <param name="NameOf">Gives the name under which a file is shown.</param>
public sealed record FindingsReport(ImmutableArray<string> Specs, ImmutableArray<Finding> All, Func<SourceFile, string> NameOf)
{
    /// <summary>A sentence for each spec that was named and could not be read.</summary>
    public ImmutableArray<string> Unread { get; init; } = [];

    public int Errors => All.Count(f => f.Blocks);

    public int Warnings => All.Count(f => f.Severity == Severity.Warning && f.AcceptedBecause is null);

    public int Advice => All.Count(f => f.Severity == Severity.Advice && f.AcceptedBecause is null);

    public int Accepted => All.Count(f => f.AcceptedBecause is not null);

    /// <summary>error, warning or advice.</summary>
    public static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "advice",
    };

    /// <summary>How many of each, in words: <c>1 error, 2 warnings, 1 accepted</c>; <c>nothing to report</c> if none.</summary>
    public string Summary()
    {
        var counts = new[]
        {
            Count(Errors, "error", "errors"), Count(Warnings, "warning", "warnings"), Count(Advice, "advice", "advice"),
            Count(Accepted, "accepted", "accepted")
        }
            .OfType<string>()
            .ToArray();
        return counts.Length == 0 ? "nothing to report" : string.Join(", ", counts);
    }

    private static string? Count(int number, string one, string many) =>
        number == 0 ? null : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{number} {(number == 1 ? one : many)}");
}
