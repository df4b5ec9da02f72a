using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Language;

namespace WireSketch.Drawing.Sheets;

/// <summary>A size of paper: Letter and Tabloid after ANSI/ASME Y14.1, A4 and A3 after ISO 216.</summary>
/// <param name="Name">As settings name it.</param>
/// <param name="Width">Width as it lies before the reader.</param>
/// <param name="Height">Height as it lies before the reader.</param>
public sealed record PaperSize(string Name, Points Width, Points Height)
{
    /// <summary>The sizes that settings and options may name.</summary>
    public static ImmutableArray<string> Names { get; } = ["letter", "A4", "A3", "tabloid"];

    /// <summary>The paper that settings or options ask for; it lies across unless they say upright.</summary>
    public static PaperSize Of(string? name, bool upright)
    {
        var (longer, shorter) = name switch
        {
            "A4" => (841.89, 595.28),
            "A3" => (1190.55, 841.89),
            "tabloid" => (1224.0, 792.0),
            _ => (792.0, 612.0),
        };
        return upright ? new(name ?? "letter", shorter, longer) : new(name ?? "letter", longer, shorter);
    }

    internal static PaperSize For(SpecSettings settings, DrawingOptions options) =>
        Of(options.Paper ?? settings.Paper?.Value, options.Upright ?? settings.Upright);
}
