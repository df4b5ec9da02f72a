using WireSketch.Drawing.Scenes;
using WireSketch.Testing;
using Xunit;

namespace WireSketch.Drawing.Tests.Scenes;

/// <summary>Wire that is in the vehicle already is drawn lighter; names are those for people.</summary>
public sealed class InheritedWireDrawingTests
{
    private static Scene Sheet(string origin)
    {
        var compiled = Compiler.Compile(
            new("a.wsk.yaml", $$"""
                wiresketch: 1
                job: { title: A job }
                zones: { engine bay: { name: Front of the van }, cabin: {} }
                gear:
                  battery: { is: battery, zone: engine bay, origin: factory, capacity: 60 Ah }
                  usb: { is: general load, name: Charging socket, zone: cabin, current: 3 A }
                  minus: { is: bus bar, zone: cabin }
                  bolt: { is: chassis point, zone: cabin, surface: bare metal }
                runs:
                  P1: { from: battery.+, to: usb.+, wire: 14 AWG red, length: 9 ft, origin: {{origin}}, fuse: { rating: 10 A, at: 6 in } }
                  G1: { from: usb.-, to: minus, wire: 14 AWG black, length: 1 ft }
                  G2: { from: minus, to: bolt, wire: 14 AWG black, length: 1 ft }
                """),
            FilesInMemory.None);
        Assert.True(compiled.Install is not null, string.Join('\n', compiled.Findings.Select(f => f.Message)));
        return DrawingSet.Draw(compiled.Install!.Wiring, compiled.Install.Answers, compiled.Findings, new() { Effort = 0.05 }).Scenes[0];
    }

    private static PathShape[] Paths(Scene scene, string run) =>
        [.. Drawn.Groups(scene, "data-run").Where(g => g.Value == run).SelectMany(g => g.Group.Shapes.OfType<PathShape>())];

    private static string[] Words(Scene scene) => [.. scene.All().OfType<TextShape>().Select(t => t.Words)];

    [Theory]
    [InlineData("existing")]
    [InlineData("factory")]
    public void A_wire_that_is_there_already_is_hollow_beside_a_thin_body(string origin)
    {
        var (added, fitted) = (Sheet("new"), Sheet(origin));
        Assert.Equal([origin], Drawn.Marks(fitted, "data-origin").Distinct());
        Assert.All(
            Drawn.Groups(fitted, "data-origin"), g => Assert.Contains(g.Group.Marks, m => m.Name == "data-run" && m.Value == "P1"));
        Assert.Empty(Drawn.Marks(added, "data-origin"));
        var (before, after) = (Paths(added, "P1"), Paths(fitted, "P1"));
        Assert.Equal(before.Max(p => p.Look.Width.Value), after.Max(p => p.Look.Width.Value), 6);
        Assert.Equal(0.45, after.Min(p => p.Look.Width.Value) / before.Min(p => p.Look.Width.Value), 2);
        Assert.Equal(Paths(added, "G1").Select(p => p.Look.Width), Paths(fitted, "G1").Select(p => p.Look.Width));
        Assert.Contains("wire already in the vehicle", Words(fitted));
        Assert.DoesNotContain("wire already in the vehicle", Words(added));
    }

    [Fact]
    public void Gear_and_zones_bear_names_for_people()
    {
        var words = string.Join(' ', Words(Sheet("new")));
        Assert.Contains("Charging socket", words, StringComparison.Ordinal);
        Assert.Contains("Negative bus", words, StringComparison.Ordinal);
        Assert.Contains("FRONT OF THE VAN", words, StringComparison.Ordinal);
        Assert.DoesNotContain("ENGINE BAY", words, StringComparison.Ordinal);
    }
}
