using System.Collections.Immutable;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>The colours of a drawing. Text keeps 4.5 : 1 and lines 3 : 1 against what they stand on (WCAG 2.2, 1.4.3 and 1.4.11); a test measures it.</summary>
internal sealed record Palette
{
    /// <summary>From so many degrees Celsius a zone is drawn warm.</summary>
    private const double HotZone = 50;

    public static Palette Print { get; } = new()
    {
        Paper = Colour.Hex("#ffffff"),
        Box = Colour.Hex("#ffffff"),
        Ink = Colour.Hex("#1b2733"),
        Quiet = Colour.Hex("#566370"),
        Hairline = Colour.Hex("#c9d0d6"),
        Hatch = Colour.Hex("#8a96a1"),
        Computed = Colour.Hex("#1f5fa8"),
        WarmZone = Colour.Hex("#fbf5ec"),
        Zone = Colour.Hex("#f3f6f8"),
        OtherZone = Colour.Hex("#f8fafb"),
        Casing = Colour.Hex("#1b2733"),
        PaleCasing = Colour.Hex("#8b959e"),
        Error = Colour.Hex("#b3261e"),
        Warning = Colour.Hex("#8a5a00"),
        Advice = Colour.Hex("#1f5fa8"),
        OnMark = Colour.Hex("#ffffff"),
    };

    public static Palette Dark { get; } = new()
    {
        Paper = Colour.Hex("#12181e"),
        Box = Colour.Hex("#1b232b"),
        Ink = Colour.Hex("#eef2f5"),
        Quiet = Colour.Hex("#a9b4be"),
        Hairline = Colour.Hex("#46525d"),
        Hatch = Colour.Hex("#7b8894"),
        Computed = Colour.Hex("#8fbdf2"),
        WarmZone = Colour.Hex("#231f18"),
        Zone = Colour.Hex("#182028"),
        OtherZone = Colour.Hex("#151c23"),
        Casing = Colour.Hex("#d5dce2"),
        PaleCasing = Colour.Hex("#5d6a76"),
        Error = Colour.Hex("#ff8a80"),
        Warning = Colour.Hex("#f2b84b"),
        Advice = Colour.Hex("#8fbdf2"),
        OnMark = Colour.Hex("#12181e"),
    };

    public required Colour Paper { get; init; }

    /// <summary>Inside of devices, labels and the title block.</summary>
    public required Colour Box { get; init; }

    public required Colour Ink { get; init; }

    public required Colour Quiet { get; init; }

    /// <summary>Rules that only order the page.</summary>
    public required Colour Hairline { get; init; }

    public required Colour Hatch { get; init; }

    public required Colour Computed { get; init; }

    /// <summary>Ground of the engine bay, or of any hot zone.</summary>
    public required Colour WarmZone { get; init; }

    public required Colour Zone { get; init; }

    public required Colour OtherZone { get; init; }

    /// <summary>Outline of a wire.</summary>
    public required Colour Casing { get; init; }

    /// <summary>Outline of a wire whose own colour is near that of the usual outline.</summary>
    public required Colour PaleCasing { get; init; }

    public required Colour Error { get; init; }

    public required Colour Warning { get; init; }

    public required Colour Advice { get; init; }

    /// <summary>Numbers on a filled mark.</summary>
    public required Colour OnMark { get; init; }

    public static Palette Of(Tint tint) => tint == Tint.Dark ? Dark : Print;

    public Colour Of(Tone tone) => tone switch
    {
        Tone.Quiet => Quiet,
        Tone.Computed => Computed,
        _ => Ink,
    };

    /// <summary>The ground of a zone: warm if it is hot, else by turns in the order of the vehicle, so that a zone looks the same on every sheet.</summary>
    public Colour OfZone(Spec spec, string zone)
    {
        var index = spec.Zones.ToList().FindIndex(z => z.Id == zone);
        return index >= 0 && spec.Zones[index].AmbientOrDefault.Value >= HotZone ? WarmZone : Math.Max(0, index) % 2 == 0 ? OtherZone : Zone;
    }

    /// <summary>What a wire of unknown colour is drawn in, by what it carries.</summary>
    public static Colour Of(RunKind kind) => kind switch
    {
        RunKind.Supply => Colour.Hex("#c8321f"),
        RunKind.Ground => Colour.Hex("#3a424a"),
        RunKind.Line => Colour.Hex("#2f6fc4"),
        RunKind.Speaker => Colour.Hex("#8a5ab4"),
        _ => Colour.Hex("#1f8f80"),
    };

    /// <summary>The steps of a heat scale, from light to dark: told apart by lightness alone.</summary>
    public static ImmutableArray<Colour> Heat { get; } = [Colour.Hex("#f7ecb5"), Colour.Hex("#f0bb57"), Colour.Hex("#dd7f34"), Colour.Hex("#ac3a2a"), Colour.Hex("#5c0f2a")];

    /// <summary>A wire that a heat scale says nothing about.</summary>
    public static Colour NoHeat { get; } = Colour.Hex("#a3adb5");

    /// <summary>The outline that shows a wire of this colour.</summary>
    public Colour CasingOf(Colour body) => body.Contrast(Casing) < 1.6 ? PaleCasing : Casing;
}
