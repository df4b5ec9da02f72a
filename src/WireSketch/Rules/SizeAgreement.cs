using System.Collections.Immutable;
using System.Text.RegularExpressions;
using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules;

/// <summary>Several findings may ask for a thicker size of one run, each for its own reason: all then name the size that is enough for all of them.</summary>
internal static partial class SizeAgreement
{
    public static IEnumerable<Finding> Of(InstalledSystem install, IEnumerable<Finding> findings)
    {
        var all = findings.ToArray();
        var wanted = all.SelectMany(f => Wishes().Matches(f.Help ?? "")).Select(m => (Run: m.Groups["run"].Value, Words: m.Groups["size"].Value))
            .Select(w => (w.Run, w.Words, Size: WireSize.TryRead(w.Words, out var size, out _) ? size : (WireSize?)null))
            .Where(w => w.Size is { } size && install.Wiring.RunsById.GetValueOrDefault(w.Run) is { } run && size > run.Wire.Size)
            .ToLookup(w => w.Run, StringComparer.Ordinal);
        foreach (var run in wanted)
        {
            var most = run.MaxBy(w => w.Size!.Value).Words;
            foreach (var less in run.Select(w => w.Words).Where(w => w != most).Distinct(StringComparer.Ordinal))
            {
                all = [.. all.Select(f => Instead(f, run.Key, less, most))];
            }
        }

        return all;
    }

    private static Finding Instead(Finding finding, string run, string less, string most)
    {
        var (was, now) = ($"make {run} {less}", $"make {run} {most}");
        return finding.Help?.Contains(was, StringComparison.Ordinal) != true ? finding : finding with
        {
            Help = finding.Help.Replace(was, now, StringComparison.Ordinal),
            Fixes = [.. finding.Fixes.Select(f => f.Says != was ? f : new Fix(now, [.. f.Edits.Select(e => e with { Words = e.Words.Replace(less, most, StringComparison.Ordinal) })]))],
        };
    }

    [GeneratedRegex(@"make (?<run>\S+) (?<size>[0-9][0-9./]* (?:AWG|mm2))")]
    private static partial Regex Wishes();
}
