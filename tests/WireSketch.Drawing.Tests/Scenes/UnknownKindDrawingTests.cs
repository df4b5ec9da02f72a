using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Scenes;
using WireSketch.Drawing.Sheets;
using WireSketch.Electrical;
using WireSketch.Testing;
using WireSketch.Topology;
using Xunit;

namespace WireSketch.Drawing.Tests.Scenes;

/// <summary>A kind of gear that nothing in the product names is drawn as it says of itself.</summary>
public sealed class UnknownKindDrawingTests
{
    [Theory]
    [InlineData(Audience.Technician, "shop charger, 13.8 V")]
    [InlineData(Audience.Customer, "charger of the shop")]
    public void It_is_drawn_with_its_own_words(Audience audience, string words)
    {
        var wiring = WiringResolver.Resolve(ShopCharger.System(), SizeChoices.None).Value;
        var set = DrawingSet.Draw(wiring, ElectricalSolver.Solve(wiring), [], new() { Audience = audience, Effort = 0.05 });

        var rack = set.Scenes.SelectMany(s => Drawn.Groups(s, "data-gear")).Where(g => g.Value == "rack").ToArray();
        Assert.NotEmpty(rack);
        var text = string.Join(' ', rack.SelectMany(g => g.Group.Shapes.OfType<TextShape>()).Select(t => t.Words))
            .Replace(DeviceLabels.Unbroken, ' ');
        Assert.Contains(words, text, StringComparison.Ordinal);
    }

    [Fact]
    public void Its_terminals_stand_where_their_flow_puts_them()
    {
        var wiring = WiringResolver.Resolve(ShopCharger.System(), SizeChoices.None).Value;
        var (supply, ground) = (wiring.RunsById["P1"].From[0], wiring.RunsById["G2"].From[0]);
        Assert.Equal(
            (PortSide.Right, PortSide.Bottom),
            (TerminalLabels.Side(supply, partnerIsBehind: false), TerminalLabels.Side(ground, partnerIsBehind: false)));
        Assert.Equal(4, Clusters.Weight(wiring.GearById["rack"]));
    }
}
