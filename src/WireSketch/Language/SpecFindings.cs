using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>The findings of one reading; what several devices share is reported once.</summary>
internal sealed class SpecFindings
{
    private readonly List<Finding> findings = [];
    private readonly HashSet<(string Rule, SourceSpan At)> seen = [];

    /// <summary>Part of the text could not be read as YAML: what is missing may stand there, so nothing is called missing.</summary>
    internal bool Broken { get; set; }

    /// <summary>How many keys and maps were not understood so far: what they would have told is not known.</summary>
    internal int Misunderstood { get; private set; }

    internal void Add(Finding finding)
    {
        if (seen.Add((finding.Rule, finding.At)))
        {
            Misunderstood += finding.Rule is "spec/unknown-key" or "spec/type" or "spec/missing" ? 1 : 0;
            findings.Add(finding);
        }
    }

    internal void AddRange(IEnumerable<Finding> more)
    {
        foreach (var finding in more)
        {
            Add(finding);
        }
    }

    internal ImmutableArray<Finding> InOrder() => [.. Finding.InOrder(findings)];
}
