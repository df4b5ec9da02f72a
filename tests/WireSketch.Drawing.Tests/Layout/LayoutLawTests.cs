using WireSketch.Drawing.Layout;
using Xunit;

namespace WireSketch.Drawing.Tests.Layout;

public class LayoutLawTests
{
    private static readonly LayoutOptions Letter = new(740, 440, Effort: 0.1);

    [Theory]
    [InlineData(8)]
    [InlineData(15)]
    [InlineData(25)]
    [InlineData(40)]
    [InlineData(80)]
    public void No_law_is_broken_on_invented_systems(int devices)
    {
        for (int seed = 1; seed <= 6; seed++)
        {
            var graph = SyntheticSystem.Of(devices, seed);
            var broken = LayoutLaws.Broken(graph, SheetArranger.Arrange(graph, Letter));
            Assert.True(broken.Count == 0, $"{devices} devices, seed {seed}: {string.Join("; ", broken.Take(5))}");
        }
    }
}
