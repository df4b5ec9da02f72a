using WireSketch.Diagnostics;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>What the help says can be done, all of it at once, and then nothing more is found.</summary>
public sealed class HelpsThatAgreeTests
{
    [Fact]
    public void One_run_gets_one_size_that_mends_everything_found_of_it()
    {
        var file = ShippedSpecs.Open("specs/wrong/thin-cable.wsk.yaml");
        var findings = Compiler.Compile(file, ShippedSpecs.Files).Findings.Where(f => f.Severity > Severity.Advice).ToArray();
        var fixes = findings.Select(f => f.Fixes.Single(x => x.Says.StartsWith("make P1 ", StringComparison.Ordinal))).ToArray();
        Assert.Equal(["supply/drop", "supply/fuse-above-wire"], findings.Select(f => f.Rule));
        Assert.Single(fixes.Select(f => f.Says).Distinct());
        Assert.All(findings, f => Assert.Contains(fixes[0].Says, f.Help!, StringComparison.Ordinal));
        var edit = fixes[0].Edits.Single();
        var mended = Compiler.Compile(
            new(file.Name, file.Text[..edit.At.Start] + edit.Words + file.Text[edit.At.End..]),
            ShippedSpecs.Files);
        Assert.DoesNotContain(mended.Findings, f => f.Severity > Severity.Advice);
    }

    [Theory]
    [InlineData("", "to: strut", "strut: { is: chassis point, zone: engine bay, surface: bare metal }")]
    [InlineData("  wing: { is: chassis point, zone: engine bay, surface: bare metal }", "to: wing", null)]
    public void The_lead_of_the_battery_lands_on_what_there_is_or_on_what_is_to_be_added(string more, string lands, string? adds)
    {
        var text = Examples.BassUpgrade.Replace("\nruns:", "\n" + more + "\nruns:", StringComparison.Ordinal);
        var help = Compiler.Compile(Example.File(text), FilesInMemory.None).Findings.Single(f => f.Rule == "ground/factory-lead").Help!;
        Assert.Contains(lands, help, StringComparison.Ordinal);
        Assert.Equal(adds is not null, help.Contains("under gear:", StringComparison.Ordinal));
        Assert.Contains(adds ?? "wing", help, StringComparison.Ordinal);
    }
}
