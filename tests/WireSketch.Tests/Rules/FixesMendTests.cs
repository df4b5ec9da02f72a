using WireSketch.Diagnostics;
using WireSketch.Rules;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>A fix that a finding offers takes the finding away.</summary>
public sealed class FixesMendTests
{
    /// <summary>Rules whose failing example offers a fix.</summary>
    public static TheoryData<string> Ids => [
        .. RuleBook.All.Select(r => r.Card).Where(c => Found(c.Bad).Any(f => f.Rule == c.Id && !f.Fixes.IsEmpty)).Select(c => c.Id)
    ];

    [Theory, MemberData(nameof(Ids))]
    public void Applied_to_the_failing_example_a_fix_removes_its_finding(string id)
    {
        var bad = RuleBook.Find(id)!.Bad;
        foreach (var finding in Found(bad).Where(f => f.Rule == id))
        {
            foreach (var fix in finding.Fixes)
            {
                var after = Found(bad, fix);
                Assert.False(
                    after.Any(f => f.Rule == id && f.Subjects.SequenceEqual(finding.Subjects)),
                    $"{fix.Says} leaves: {finding.Message}");
            }
        }
    }

    private static IEnumerable<Finding> Found(string bad, Fix? fix = null)
    {
        var file = Example.File(bad);
        var text = (fix?.Edits ?? []).OrderByDescending(e => e.At.Start)
            .Aggregate(file.Text, (t, e) => t[..e.At.Start] + e.Words + t[e.At.End..]);
        return Compiler.Compile(new(file.Name, text), FilesInMemory.None).Findings;
    }
}
