using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Scenes;
using WireSketch.Drawing.Sheets;
using WireSketch.Topology;
using Xunit;

namespace WireSketch.Drawing.Tests.Scenes;

/// <summary>
/// What a reader of the drawing relies on: color on the label, the dash of each kind, grounds below, labels on their own wires.
/// </summary>
public sealed class WhatIsShownTests
{
    /// <summary>Dash over gap of the second color of a wire.</summary>
    private const double Tracer = 5.0 / 3;

    public static TheoryData<string> Small => ["one-amplifier", "two-batteries", "work-van"];

    /// <summary>By its code of IEC 60757, as the table beside the tests has it.</summary>
    [Theory]
    [MemberData(nameof(Small))]
    public void A_label_names_the_color_of_its_wire(string spec)
    {
        var scene = Drawn.Draw(spec).Scenes[0];
        var colored = Drawn.Compile(spec).Install!.Wiring.Runs.Where(r => r.Wire.Colors.Length == 1).ToArray();
        Assert.NotEmpty(colored);
        var codes = Testing.Repository.Read("tests/WireSketch.Tests/Data/conductor-colours.csv")
            .Split('\n')
            .Skip(1)
            .Select(l => l.Split(','))
            .Where(c => c.Length > 2)
            .ToDictionary(c => c[2].Split(' ')[0].Trim('"').Replace("grey", "gray", StringComparison.Ordinal), c => c[1]);
        foreach (var run in colored)
        {
            var label = string.Join(" · ", scene.All().OfType<TextShape>()
                .Where(t => t.Marks.Any(m => m.Name is "data-label-for" or "data-part-of" && m.Value == run.Id)).Select(t => t.Words));
            Assert.Contains($" {codes[run.Wire.Colors[0]]}", label, StringComparison.Ordinal);
        }
    }

    /// <summary>Supply and ground are solid; control, signal and speaker wires have each a dash of their own.</summary>
    [Theory]
    [MemberData(nameof(Small))]
    public void Kinds_are_told_apart_by_their_dash(string spec)
    {
        var scene = Drawn.Draw(spec).Scenes[0];
        var dashes = Drawn.Groups(scene, "data-kind")
            .Where(g => Drawn.Compile(spec).Spec.Runs.Any(r => g.Group.Marks.Any(m => m.Name == "data-run" && m.Value == r.Id)))
            .SelectMany(g => g.Group.Shapes.OfType<PathShape>().Select(p => (Kind: g.Value, p.Look.Dash)))
            .Where(p => p.Dash.Dash.Value != 0 && Math.Abs((p.Dash.Dash.Value / p.Dash.Gap.Value) - Tracer) > 0.01)
            .GroupBy(p => p.Kind, p => Math.Round(p.Dash.Dash.Value / p.Dash.Gap.Value, 2))
            .ToDictionary(g => g.Key, g => g.Distinct().ToArray());
        Assert.DoesNotContain("supply", dashes.Keys);
        Assert.DoesNotContain("ground", dashes.Keys);
        var kinds = Drawn.Groups(scene, "data-kind").Select(g => g.Value).Distinct().Except(["supply", "ground"]).ToArray();
        Assert.Equal(kinds.Order(), dashes.Keys.Order());
        Assert.All(dashes.Values, d => Assert.Single(d));
        Assert.Equal(dashes.Count, dashes.Values.Select(d => d[0]).Distinct().Count());
        Assert.Equal(
            3,
            new[] { RunKind.Control, RunKind.Line, RunKind.Speaker }.Select(WireDrawer.Dash).Distinct().Count(d => d.Dash.Value > 0));
    }

    /// <summary>A label's box is centered on a stretch of its own run.</summary>
    [Theory]
    [MemberData(nameof(Small))]
    public void A_label_lies_in_the_middle_of_its_own_wire(string spec)
    {
        var scene = Drawn.Draw(spec).Scenes[0];
        var checkedLabels = 0;
        foreach (var label in scene.All().OfType<TextShape>().Where(t => t.Marks.Any(m => m.Name == "data-label-for")))
        {
            var run = label.Marks.First(m => m.Name == "data-label-for").Value;
            var box = label.Marks.First(m => m.Name == "data-box").Value
                .Split(' ')
                .Select(n => double.Parse(n, System.Globalization.CultureInfo.InvariantCulture))
                .ToArray();
            var middle = (X: box[0] + (box[2] / 2), Y: box[1] + (box[3] / 2));
            var own = Drawn.Groups(scene, "data-run").Where(g => g.Value == run).SelectMany(g => g.Group.Shapes.OfType<PathShape>())
                .SelectMany(p =>
                    p.Steps.Zip(p.Steps.Skip(1)).Where(s => s.Second.Move == PathMove.Line).Select(s => (A: s.First.To, B: s.Second.To)))
                .ToArray();
            Assert.True(
                own.Any(s => Within(middle.X, s.A.X.Value, s.B.X.Value) && Within(middle.Y, s.A.Y.Value, s.B.Y.Value)),
                $"{run}: the middle of its label, {middle}, is on none of its stretches");
            checkedLabels++;
        }

        Assert.True(checkedLabels >= 5);
    }

    /// <summary>Grounds leave at the bottom of a box.</summary>
    [Theory]
    [MemberData(nameof(Small))]
    public void Grounds_of_devices_leave_below(string spec)
    {
        var install = Drawn.Compile(spec).Install!;
        var sheet = SheetPlan.Whole(install.Wiring, new(install.Wiring, new Figures(install.Answers, default), [], new()))!;
        var grounds = sheet.Graph.Devices.Where(d => d.Shape == DeviceShape.Box).SelectMany(d => d.Ports)
            .Where(p =>
                install.Wiring.TerminalsById.TryGetValue(p.Id, out var t)
                    && t is { Role: Language.TerminalRole.Ground, Gear: Language.Kinds.Amplifier or Language.Kinds.Battery })
            .ToArray();
        Assert.NotEmpty(grounds);
        Assert.All(grounds, p => Assert.Equal(PortSide.Bottom, p.Side));
    }

    private static bool Within(double x, double a, double b) => x >= Math.Min(a, b) - 1 && x <= Math.Max(a, b) + 1;
}
