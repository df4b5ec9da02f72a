using System.Collections.Immutable;
using WireSketch.Drawing.Layout;
using Xunit;

namespace WireSketch.Drawing.Tests.Layout;

public class LayoutLawTests
{
    private static readonly LayoutOptions Quick = new(740, 440, Effort: 0.02);

    [Theory]
    [InlineData(8, 6)]
    [InlineData(15, 5)]
    [InlineData(25, 3)]
    [InlineData(40, 2)]
    [InlineData(80, 1)]
    [InlineData(150, 1)]
    [InlineData(300, 1)]
    public void No_law_is_broken_on_invented_systems(int devices, int seeds)
    {
        for (int seed = 1; seed <= seeds; seed++)
        {
            Check(SyntheticSystem.Of(devices, seed), $"{devices} devices, seed {seed}");
        }
    }

    [Fact]
    public void No_law_is_broken_when_every_port_is_above_or_below()
    {
        for (int seed = 1; seed <= 3; seed++)
        {
            var graph = SyntheticSystem.Of(20, seed);
            var devices = graph.Devices.Select((d, k) => d with
            {
                Shape = d.Shape == DeviceShape.Chassis ? d.Shape : DeviceShape.Box,
                Ports = [.. d.Ports.Select((p, i) => p with { Side = (i + k) % 2 == 0 ? PortSide.Top : PortSide.Bottom })],
            });
            Check(graph with { Devices = [.. devices] }, $"seed {seed}");
        }
    }

    [Fact]
    public void No_law_is_broken_between_walls_on_every_side()
    {
        for (int seed = 1; seed <= 3; seed++)
        {
            var graph = SyntheticSystem.Of(25, seed);
            Check(graph with { Zones = [.. graph.Zones.Select(z => z with { WallAfter = true })] }, $"seed {seed}");
        }
    }

    [Fact]
    public void Many_labelled_wires_between_two_bars_each_get_a_stretch_of_their_own()
    {
        var left = Box("left", [Port("left.bar", PortSide.Right)]);
        var right = Box("right", [Port("right.bar", PortSide.Left)]);
        var wires = Enumerable.Range(1, 5).Select(k => Wire($"P{k}", "left.bar", "right.bar"));
        Check(new SheetGraph([new ZoneBox("cabin", 30, false)], [left, right], [.. wires]), "bars");
    }

    [Fact]
    public void A_sheet_with_an_empty_zone_or_without_wires_is_laid_out()
    {
        var device = Box("radio", []);
        var graph = new SheetGraph(
            [new ZoneBox("engine bay", 60, true), new ZoneBox("dash", 30, false), new ZoneBox("rear", 200, false)],
            [device with { Zone = 1 }],
            []);
        Check(graph, "one device");
        Check(graph with { Devices = [] }, "no device");
        Assert.Empty(SheetArranger.Arrange(new SheetGraph([], [], []), Quick).Devices);
    }

    [Fact]
    public void A_wire_to_an_unknown_terminal_is_refused_by_name()
    {
        var graph = new SheetGraph(
            [new ZoneBox("cabin", 30, false)],
            [Box("amp", [Port("amp.+", PortSide.Left)])],
            [Wire("P1", "amp.+", "amp.x")]);
        var error = Assert.Throws<ArgumentException>(() => SheetArranger.Arrange(graph, Quick));
        Assert.Contains("amp.x", error.Message, StringComparison.Ordinal);
    }

    private static DeviceBox Box(string id, ImmutableArray<PortBox> ports) => new(id, 0, DeviceShape.Box, 40, 12, 0, ports);

    private static PortBox Port(string id, PortSide side) => new(id, side, 12);

    private static WireLink Wire(string id, string from, string to) => new(id, id, "net", "supply", from, [to], 40, 18, 4);

    private static void Check(SheetGraph graph, string what)
    {
        var broken = LayoutLaws.Broken(graph, SheetArranger.Arrange(graph, Quick));
        Assert.True(broken.Count == 0, $"{what}: {string.Join("; ", broken.Take(5))}");
    }
}
