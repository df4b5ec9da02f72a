using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Scenes;

namespace WireSketch.Drawing.Tests.Output;

/// <summary>A small scene with every kind of shape and the letters that drawings need.</summary>
internal static class SampleScene
{
    private static readonly Color Ink = Color.Hex("#1b2733");
    private static readonly Color Blue = Color.Hex("#1f5fa8");

    public static Scene Of(string name = "Overview", string words = "AV To 4 Ω · 21 mm² · 17 ft") => new()
    {
        Name = name,
        Title = "A sample <sheet>",
        Description = "Two boxes & a wire",
        Width = 792,
        Height = 612,
        Paper = Color.Hex("#ffffff"),
        Shapes =
        [
            new RectShape(new(40, 60, 200, 120), 5, new(Color.Hex("#f3f6f8"), Ink, 1.2, (4, 3))),
            new GroupShape(
                "Run P1",
                [new PathShape(Course, new(null, Ink, 5, RoundEnds: true)), new PathShape(Course, new(null, Color.Hex("#c8321f"), 3.8))])
            {
                Marks = [new("data-run", "P1")],
            },
            new CircleShape(new(240, 100), 3, new(Color.Hex("#ffffff"), Ink, 1)),
            Line(60, 90, 12, words, FontWeight.SemiBold),
            Line(60, 120, 7, "Size 7: +−×÷ 0123456789 é ü ß ≥ ≤ ° µ Ω ² – — … → □"),
            Line(60, 140, 6, "Wire labels, terminals and notes stand at six points and larger."),
            new TextShape(
                new(400, 300),
                8.5,
                TextAnchor.Middle,
                [
                    new("P1", FontWeight.SemiBold, Ink),
                    new(" · 4 AWG · RD · 17 ft ", FontWeight.Regular, Ink),
                    new("38 A", FontWeight.Regular, Blue)
                ]),
            new TextShape(new(700, 300), 8, TextAnchor.End, [new("ends here", FontWeight.Regular, Ink)], 0.8),
            new TextShape(new(30, 400), 8, TextAnchor.Start, [new("FIREWALL", FontWeight.Regular, Ink)], 0.8, Upwards: true),
        ],
    };

    private static ImmutableArray<PathSegment> Course =>
    [
        new(PathMove.Start, new(240, 100)),
        new(PathMove.Line, new(294, 100)),
        new(PathMove.Arc, new(300, 106), 6, true),
        new(PathMove.Line, new(300, 194)),
        new(PathMove.Arc, new(306, 200), 6), new(PathMove.Line, new(400, 200)),
    ];

    private static TextShape Line(int x, int y, Points size, string words, FontWeight weight = FontWeight.Regular) =>
        new(new(x, y), size, TextAnchor.Start, [new(words, weight, Ink)]);
}
