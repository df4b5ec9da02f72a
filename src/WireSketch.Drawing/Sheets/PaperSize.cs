using WireSketch.Drawing.Fonts;
using WireSketch.Language;

namespace WireSketch.Drawing.Sheets;

/// <summary>A size of paper: Letter and Tabloid after ANSI/ASME Y14.1, A4 and A3 after ISO 216.</summary>
/// <param name="Name">As settings name it.</param>
/// <param name="Width">Width as it lies before the reader.</param>
/// <param name="Height">Height as it lies before the reader.</param>
public sealed record PaperSize(string Name, Points Width, Points Height)
{
    /// <summary>The paper that settings or options ask for; it lies across unless they say upright.</summary>
    public static PaperSize Of(SheetSize size, bool upright)
    {
        var (longer, shorter) = size switch
        {
            SheetSize.A4 => (841.89, 595.28),
            SheetSize.A3 => (1190.55, 841.89),
            SheetSize.Tabloid => (1224.0, 792.0),
            _ => (792.0, 612.0),
        };
        var name = SheetSizes.Words[size];
        return upright ? new(name, shorter, longer) : new(name, longer, shorter);
    }

    internal static PaperSize For(SpecSettings settings, DrawingOptions options) =>
        Of(options.Paper ?? settings.Paper?.Value ?? SheetSize.Letter, options.Upright ?? settings.Upright);
}
