using System.Collections.Immutable;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>
/// The colors of a drawing. Text keeps 4.5 : 1 and lines 3 : 1 against what they stand on (WCAG 2.2, 1.4.3 and 1.4.11); a test measures
/// it.
/// </summary>
internal sealed record Palette
{
    /// <summary>From so many degrees Celsius a zone is drawn warm.</summary>
    private const double HotZone = 50;

    public static Palette Print { get; } = new()
    {
        Paper = Color.Hex("#ffffff"),
        Box = Color.Hex("#ffffff"),
        Ink = Color.Hex("#1b2733"),
        Quiet = Color.Hex("#566370"),
        Hairline = Color.Hex("#c9d0d6"),
        Hatch = Color.Hex("#8a96a1"),
        Computed = Color.Hex("#1f5fa8"),
        WarmZone = Color.Hex("#fbf5ec"),
        Zone = Color.Hex("#f3f6f8"),
        OtherZone = Color.Hex("#f8fafb"),
        Casing = Color.Hex("#1b2733"),
        PaleCasing = Color.Hex("#8b959e"),
        Error = Color.Hex("#b3261e"),
        Warning = Color.Hex("#8a5a00"),
        Advice = Color.Hex("#1f5fa8"),
        OnMark = Color.Hex("#ffffff"),
    };

    public static Palette Dark { get; } = new()
    {
        Paper = Color.Hex("#12181e"),
        Box = Color.Hex("#1b232b"),
        Ink = Color.Hex("#eef2f5"),
        Quiet = Color.Hex("#a9b4be"),
        Hairline = Color.Hex("#46525d"),
        Hatch = Color.Hex("#7b8894"),
        Computed = Color.Hex("#8fbdf2"),
        WarmZone = Color.Hex("#231f18"),
        Zone = Color.Hex("#182028"),
        OtherZone = Color.Hex("#151c23"),
        Casing = Color.Hex("#d5dce2"),
        PaleCasing = Color.Hex("#5d6a76"),
        Error = Color.Hex("#ff8a80"),
        Warning = Color.Hex("#f2b84b"),
        Advice = Color.Hex("#8fbdf2"),
        OnMark = Color.Hex("#12181e"),
    };

    public required Color Paper { get; init; }

    /// <summary>Inside of devices, labels and the title block.</summary>
    public required Color Box { get; init; }

    public required Color Ink { get; init; }

    public required Color Quiet { get; init; }

    /// <summary>Rules that only order the page.</summary>
    public required Color Hairline { get; init; }

    public required Color Hatch { get; init; }

    public required Color Computed { get; init; }

    /// <summary>Ground of the engine bay, or of any hot zone.</summary>
    public required Color WarmZone { get; init; }

    public required Color Zone { get; init; }

    public required Color OtherZone { get; init; }

    /// <summary>Outline of a wire.</summary>
    public required Color Casing { get; init; }

    /// <summary>Outline of a wire whose own color is near that of the usual outline.</summary>
    public required Color PaleCasing { get; init; }

    public required Color Error { get; init; }

    public required Color Warning { get; init; }

    public required Color Advice { get; init; }

    /// <summary>Numbers on a filled mark.</summary>
    public required Color OnMark { get; init; }

    public static Palette Of(Theme theme) => theme == Theme.Dark ? Dark : Print;

    public Color Of(TextEmphasis emphasis) => emphasis switch
    {
        TextEmphasis.Quiet => Quiet,
        TextEmphasis.Computed => Computed,
        _ => Ink,
    };

    /// <summary>
    /// The ground of a zone: warm if it is hot, else by turns in the order of the vehicle, so that a zone looks the same on every sheet.
    /// </summary>
    public Color OfZone(Spec spec, string zone)
    {
        var index = spec.Zones.ToList().FindIndex(z => z.Id == zone);
        return index >= 0 && spec.Zones[index].AmbientOrDefault.Value >= HotZone ? WarmZone
            : Math.Max(0, index) % 2 == 0 ? OtherZone
            : Zone;
    }

    /// <summary>What a wire of unknown color is drawn in, by what it carries.</summary>
    public static Color Of(RunKind kind) => kind switch
    {
        RunKind.Supply => Color.Hex("#c8321f"),
        RunKind.Ground => Color.Hex("#3a424a"),
        RunKind.Line => Color.Hex("#2f6fc4"),
        RunKind.Speaker => Color.Hex("#8a5ab4"),
        _ => Color.Hex("#1f8f80"),
    };

    /// <summary>The steps of a heat scale, from light to dark: told apart by lightness alone.</summary>
    public static ImmutableArray<Color> Heat { get; } = [
        Color.Hex("#f7ecb5"), Color.Hex("#f0bb57"), Color.Hex("#dd7f34"), Color.Hex("#ac3a2a"), Color.Hex("#5c0f2a")
    ];

    /// <summary>A wire that a heat scale says nothing about.</summary>
    public static Color NoHeat { get; } = Color.Hex("#a3adb5");

    /// <summary>The outline that shows a wire of this color.</summary>
    public Color CasingOf(Color body) => body.Contrast(Casing) < 1.6 ? PaleCasing : Casing;
}
