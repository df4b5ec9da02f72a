using WireSketch.Documents.Lists;
using WireSketch.Testing;

namespace WireSketch.Tests.Topology;

/// <summary>A grommet that a path passes is the run's own: it is drawn, bought, and written on the piece.</summary>
public sealed class WallGuardTests
{
    [Fact]
    public void A_run_along_a_path_uses_the_grommet_of_the_path()
    {
        var text = Repository.Read("specs/one-amplifier.wsk.yaml")
            .Replace("length: 17 ft, fuse", "fuse", StringComparison.Ordinal)
            .Replace(", through: firewall grommet", "", StringComparison.Ordinal)
            .Replace(
                "\ngear:\n",
                "\npaths:\n  cowl: { from: engine bay, to: cabin, length: 17 ft, passes: firewall grommet }\n\ngear:\n",
                StringComparison.Ordinal);
        var compiled = Compiler.Compile(new("cowl.wsk.yaml", text), ShippedSpecs.Files);
        Assert.Empty(compiled.Findings.Select(f => f.Message));
        Assert.Equal("firewall grommet", compiled.Install!.Wiring.RunsById["P1"].Guard);
        var cuts = CutList.From(compiled.Install);
        Assert.Contains(CoveringLines.Of(compiled.Install, cuts), l => l.Item == "firewall grommet");
    }

    [Theory]
    [InlineData("firewall grommet", true)]
    [InlineData("Rubber Boot", true)]
    [InlineData("a drilled hole", false)]
    [InlineData("no grommet, bare edge", false)]
    public void Words_that_name_a_guard(string words, bool guard) => Assert.Equal(guard, WireSketch.Language.PassageWords.IsGuard(words));
}
