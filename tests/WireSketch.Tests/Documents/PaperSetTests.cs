using WireSketch.Documents;
using WireSketch.Testing;

namespace WireSketch.Tests.Documents;

public sealed class PaperSetTests
{
    public static TheoryData<string> Good => [.. ShippedSpecs.Good];

    [Theory]
    [MemberData(nameof(Good))]
    public void Papers_for_work_carry_the_cautions(string name)
    {
        var built = Built.Shipped(Path.GetFileName(name)[..^".wsk.yaml".Length]);
        foreach (var paper in new[] { "report.md", "setup.md" })
        {
            Assert.All(Cautions.ForTechnicians, c => Assert.Contains(c, built.Text(paper), StringComparison.Ordinal));
        }

        Assert.All(Cautions.ForOwners, c => Assert.Contains(c, built.Text("handover.md"), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("one-amplifier")]
    [InlineData("two-amplifiers")]
    [InlineData("camper")]
    public void Lists_and_papers_are_as_committed(string name)
    {
        var built = Built.Shipped(name);
        foreach (var paper in new[] { "parts.csv", "cuts.csv", "setup.md", "handover.md", "findings.md" })
        {
            // Byte-order mark and line ends of the tables have tests of their own.
            Baseline.Match(
                $"tests/WireSketch.Tests/Documents/Shipped/{name}.{paper}",
                built.Text(paper).TrimStart('\uFEFF').ReplaceLineEndings("\n"));
        }
    }

    [Fact]
    public void A_job_that_may_not_be_built_says_so_on_every_paper()
    {
        var result = Compiler.Compile(ShippedSpecs.Open("specs/wrong/no-fuse.wsk.yaml"), ShippedSpecs.Files);
        var papers = PaperSet.From(result.ForPapers).Papers.Where(p => p.Name.EndsWith(".md", StringComparison.Ordinal)).ToArray();
        Assert.Equal(6, papers.Length);
        Assert.All(
            papers,
            p =>
                Assert.Contains(
                    "NOT FOR INSTALLATION: one error is open",
                    System.Text.Encoding.UTF8.GetString(p.Bytes.Span),
                    StringComparison.Ordinal));
    }

    [Fact]
    public void The_owner_is_told_where_each_fuse_is_and_what_it_feeds() =>
        Assert.Contains(
            "| P1.fuse | 60 A | strip | 12 in from battery.+ (engine bay) | amp |",
            Built.Shipped("one-amplifier").Text("handover.md"),
            StringComparison.Ordinal);

    [Fact]
    public void What_was_accepted_is_told_with_its_reason()
    {
        var built = ShippedSpecs.Good.Select(n => Built.Shipped(Path.GetFileName(n)[..^".wsk.yaml".Length]))
            .First(b => b.Result.Findings.Any(f => f.AcceptedBecause is not null));
        var reason = built.Result.Findings.First(f => f.AcceptedBecause is not null).AcceptedBecause!;
        Assert.Contains($"Reason: {reason}", built.Text("handover.md"), StringComparison.Ordinal);
        Assert.Contains(reason, built.Text("findings.md"), StringComparison.Ordinal);
    }
}
