using WireSketch.Diagnostics;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Output;
using WireSketch.Drawing.Scenes;
using WireSketch.Drawing.Sheets;
using WireSketch.Testing;
using Xunit;

namespace WireSketch.Drawing.Tests.Scenes;

/// <summary>What every drawing keeps, over shipped specs.</summary>
public sealed class DrawingSetTests
{
    public static TheoryData<string> Small => ["one-amplifier", "two-batteries", "work-van"];

    [Theory]
    [MemberData(nameof(Small))]
    public void No_text_lies_on_another_and_none_leaves_the_page(string spec)
    {
        foreach (var scene in Drawn.Draw(spec).Scenes)
        {
            // The line is set tighter than its em: capitals and tails of neighbors may touch it, letters do not touch.
            var texts = scene.All().OfType<TextShape>().Select(t => (t.Words, Box: Tight(Drawn.BoxOf(t)))).ToArray();
            for (var i = 0; i < texts.Length; i++)
            {
                Assert.True(
                    texts[i].Box.X >= 0 && texts[i].Box.Y >= 0 && texts[i].Box.Right <= scene.Width && texts[i].Box.Bottom <= scene.Height,
                    texts[i].Words);
                for (var k = i + 1; k < texts.Length; k++)
                {
                    Assert.False(Overlap(texts[i].Box, texts[k].Box), $"{texts[i].Words} lies on {texts[k].Words}");
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Small))]
    public void Every_text_is_six_points_or_more_and_ratings_findings_and_cautions_seven(string spec)
    {
        foreach (var scene in Drawn.Draw(spec).Scenes)
        {
            Assert.All(scene.All().OfType<TextShape>(), t => Assert.True(t.Size >= 6, $"{t.Words} is {t.Size} pt"));
            var holders = Drawn.Groups(scene, "data-gear")
                .Where(g => g.Value.EndsWith(".fuse", StringComparison.Ordinal) || g.Value.EndsWith(".breaker", StringComparison.Ordinal))
                .ToArray();
            Assert.Equal(scene.Name == "Vehicle plan", holders.Length == 0);
            Assert.All(holders, h => Assert.True(h.Group.Shapes.OfType<TextShape>().First().Size >= 7));
            Assert.True(scene.All().OfType<TextShape>().First(t => t.Words.StartsWith("Disconnect", StringComparison.Ordinal)).Size >= 7);
        }
    }

    [Theory]
    [MemberData(nameof(Small))]
    public void Every_run_is_drawn_between_drawn_terminals_and_labelled(string spec)
    {
        var scene = Drawn.Draw(spec).Scenes[0];
        var terminals = Drawn.Marks(scene, "data-terminal").ToArray();
        Assert.Equal(terminals.Length, terminals.Distinct().Count());
        var runs = Drawn.Groups(scene, "data-run").ToArray();
        Assert.Equal(Drawn.Compile(spec).Spec.Runs.Select(r => r.Id).Order(), runs.Select(r => r.Value).Distinct().Order());
        foreach (var (id, group) in runs)
        {
            var ends = group.Marks.Where(m => m.Name is "data-from" or "data-to").SelectMany(m => m.Value.Split(' '));
            Assert.All(ends, e => Assert.Contains(e, terminals));
            Assert.Contains(id, Drawn.Marks(scene, "data-label-for"));
            Assert.Contains(group.Marks, m => m.Name == "data-kind" && m.Value is "supply" or "ground" or "line" or "speaker" or "control");
        }

        Assert.All(Drawn.Groups(scene, "data-gear"), g => Assert.IsType<RectShape>(g.Group.Shapes[0]));
        Assert.All(Drawn.Groups(scene, "data-zone"), g => Assert.IsType<RectShape>(g.Group.Shapes[0]));
    }

    [Fact]
    public void The_same_spec_gives_the_same_bytes_in_every_format()
    {
        var (one, two) = (Drawn.Draw("one-amplifier"), Drawn.Draw("one-amplifier"));
        Assert.Equal(SvgWriter.Write(one.Scenes[0]), SvgWriter.Write(two.Scenes[0]));
        Assert.Equal(PngWriter.Write(one.Scenes[0], 100), PngWriter.Write(two.Scenes[0], 100));
        Assert.Equal(PdfWriter.Write(one.Scenes, "a"), PdfWriter.Write(two.Scenes, "a"));
    }

    [Fact]
    public void Customer_and_technician_see_every_device_in_the_same_place()
    {
        var (technician, customer) = (
            Drawn.Draw("work-van").Scenes[0],
            Drawn.Draw("work-van", new() { Audience = Audience.Customer }).Scenes[0]);
        Assert.Equal(Places(technician), Places(customer));
        Assert.DoesNotContain(
            customer.All().OfType<TextShape>(),
            t => t.Words.Contains("AWG", StringComparison.Ordinal) || t.Words.Contains(" V, ", StringComparison.Ordinal));
        Assert.Contains(customer.All().OfType<TextShape>(), t => t.Words.StartsWith("Never replace a fuse", StringComparison.Ordinal));

        static IEnumerable<(string, Points, Points, Points)> Places(Scene scene) =>
            Drawn.Groups(scene, "data-gear")
                .Select(g => (g.Value, g.Group.Shapes.OfType<RectShape>().First().Area))
                .Select(g => (g.Value, g.Area.X, g.Area.Y, g.Area.Width));
    }

    [Fact]
    public void An_open_error_stamps_the_sheet_and_an_accepted_one_does_not()
    {
        var compiled = Drawn.Compile("one-amplifier");
        var error = new Finding("supply/unfused", Severity.Error, "P1 has no fuse", compiled.Spec.Runs[0].Name.At) { Subjects = ["P1"] };
        Assert.Single(Drawn.Marks(Draw(error), "data-stamp"));
        Assert.Equal(["supply/unfused", "supply/unfused", "supply/unfused"], Drawn.Marks(Draw(error), "data-rule"));
        Assert.Empty(Drawn.Marks(Draw(error with { AcceptedBecause = "a bench set-up" }), "data-stamp"));
        Assert.Contains(
            Draw(error with { AcceptedBecause = "a bench set-up" }).All().OfType<TextShape>(),
            t => t.Words.Contains("bench", StringComparison.Ordinal));

        Scene Draw(Finding finding) =>
            DrawingSet.Draw(compiled.Install!.Wiring, compiled.Install.Answers, [finding], new() { Effort = 0.05 }).Scenes[0];
    }

    [Fact]
    public void An_open_error_stamps_every_sheet_of_a_set()
    {
        var compiled = Drawn.Compile("competition");
        var error = new Finding("supply/unfused", Severity.Error, "P1 has no fuse", compiled.Spec.Runs[0].Name.At) { Subjects = ["P1"] };
        var set = DrawingSet.Draw(compiled.Install!.Wiring, compiled.Install.Answers, [error], new() { Effort = 0.05 });
        Assert.All(set.Scenes, s => Assert.Single(Drawn.Marks(s, "data-stamp")));
    }

    [Fact]
    public void A_chosen_rating_stands_on_the_drawing_and_not_the_word_auto()
    {
        var text = Repository.Read("specs/one-amplifier.wsk.yaml")
            .Replace("fuse: { rating: 60 A, at: 12 in }", "fuse: { rating: auto, at: 12 in }", StringComparison.Ordinal);
        var compiled = Compiler.Compile(new("auto.wsk.yaml", text), FilesInMemory.None);
        var chosen = compiled.Install!.Wiring.Links.Single(l => l.Id == "P1.fuse").Rating;
        var scene =
            DrawingSet.Draw(compiled.Install.Wiring, compiled.Install.Answers, compiled.Findings, new() { Effort = 0.05 }).Scenes[0];
        Assert.Contains(scene.All().OfType<TextShape>(), t => t.Words == chosen.ToString());
        Assert.DoesNotContain(scene.All().OfType<TextShape>(), t => t.Words.Contains("auto", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_finding_of_a_device_and_of_a_run_has_its_own_mark()
    {
        var compiled = Drawn.Compile("one-amplifier");
        Finding[] findings = [
            .. new[]
            {
                "amp", "amp", "P1", "P1", "P1"
            }.Select((s, i) => new Finding($"a/b{i}", Severity.Warning, $"no {i}", compiled.Spec.Runs[0].Name.At) { Subjects = [s] })
        ];
        var scene = DrawingSet.Draw(compiled.Install!.Wiring, compiled.Install.Answers, [.. findings], new() { Effort = 0.05 }).Scenes[0];
        var marks = Drawn.Groups(scene, "data-finding").Select(g => g.Value).ToArray();
        // On the thing and in the margin; the first also as the legend's sample.
        Assert.Equal(["1", "1", "1", "2", "2", "3", "3", "4", "4", "5", "5"], marks.Order());
    }

    [Fact]
    public void Heat_colors_supply_and_ground_and_leaves_other_wires_gray()
    {
        var scene = Drawn.Draw("one-amplifier", new() { Heat = LoadColoring.Load }).Scenes[0];
        foreach (var (run, group) in Drawn.Groups(scene, "data-run"))
        {
            var ink = group.Shapes.OfType<PathShape>().Select(p => p.Look.Stroke).ToArray();
            var hot = group.Marks.Any(m => m.Name == "data-kind" && m.Value is "supply" or "ground");
            Assert.Equal(hot, ink.Any(c => c is { } color && Palette.Heat.Contains(color)));
            Assert.Equal(!hot, ink.Contains(Palette.NoHeat));
            Assert.NotEmpty(run);
        }

        Assert.Contains(scene.All().OfType<TextShape>(), t => t.Words == "25 % to 50 %");
    }

    [Fact]
    public void A_system_too_large_for_a_sheet_is_split()
    {
        var set = Drawn.Draw("competition");
        Assert.True(set.Scenes.Length > 3);
        Assert.Equal("Overview", set.Scenes[0].Name);
        Assert.Equal("Index and findings", set.Scenes[^1].Name);
        Assert.Null(set.Arrangement);
        var plan = Assert.Single(set.Scenes, s => s.Name == "Vehicle plan");
        Assert.Equal(Drawn.Compile("competition").Spec.Gear.Select(g => g.Id).Order(), Drawn.Marks(plan, "data-gear").Order());
        var drawn = set.Scenes.Skip(1).SelectMany(s => Drawn.Marks(s, "data-run")).ToHashSet();
        Assert.Equal(Drawn.Compile("competition").Spec.Runs.Select(r => r.Id).Order(), drawn.Order());
    }

    [Fact]
    public void Every_flag_names_the_sheet_and_the_square_of_its_partner()
    {
        // A narrow page holds few boxes.
        var set = Drawn.Draw("camper", new() { Paper = WireSketch.Language.SheetSize.A4, Upright = true });
        var flags = set.Scenes.SelectMany((s, i) =>
            Drawn.Groups(s, "data-gear")
                .Where(g => g.Value.EndsWith(":on", StringComparison.Ordinal))
                .Select(g => (Sheet: i + 1, Run: g.Value, Words: g.Group.Shapes.OfType<TextShape>().Single().Words)))
            .ToArray();
        Assert.NotEmpty(flags);
        foreach (var (sheet, run, words) in flags)
        {
            var there = int.Parse(words.Split(' ')[2].TrimEnd(','), System.Globalization.CultureInfo.InvariantCulture);
            Assert.NotEqual(sheet, there);
            Assert.Contains(flags, f => f.Sheet == there && f.Run == run && f.Words[0] == words[0]);
            Assert.Matches("^[A-F][1-8]$", words.Split(' ')[3]);
        }
    }

    [Fact]
    public void Every_shipped_system_can_be_described_in_words()
    {
        var scene = Drawn.Draw("one-amplifier").Scenes[0];
        Assert.StartsWith("8 devices, 6 wires and ", scene.Description, StringComparison.Ordinal);
        Assert.Contains("P1: power, 4 AWG, red, 17 ft, from battery.+ to amp.+", scene.Description, StringComparison.Ordinal);
    }

    private static Rect Tight(Rect box) => new(box.X + 0.3, box.Y + (box.Height * 0.1), box.Width - 0.6, box.Height * 0.72);

    private static bool Overlap(Rect a, Rect b) => a.X < b.Right && b.X < a.Right && a.Y < b.Bottom && b.Y < a.Bottom;
}
