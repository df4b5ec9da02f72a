using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>How much room a sheet has for its labels.</summary>
internal enum LabelForm
{
    /// <summary>Everything about the wire on one line, what was computed on a second.</summary>
    Wide,

    /// <summary>Id and size on one line, color and length on the next, what was computed for a supply on a third.</summary>
    Narrow,

    /// <summary>As narrow, without what was computed; boxes without what is set on them and with fewer words.</summary>
    Tight,
}

/// <summary>What a wire's label says.</summary>
internal static class LabelText
{
    public static ImmutableArray<TextLine> For(WiredRun run, Figures figures, LabelForm form, Audience audience)
    {
        var id = new SheetText(run.Id, TextEmphasis.Strong);
        if (audience == Audience.Customer)
        {
            return form == LabelForm.Wide ? [new([id, new(" · " + Plain(run.Kind))])] : [new([id]), TextLine.Of(Plain(run.Kind))];
        }

        var size = Size(run);
        var rest = GearDrawing.Join(Color(run), Length(run)).Replace(", ", " · ", StringComparison.Ordinal);
        var computed = form == LabelForm.Wide
            || (form == LabelForm.Narrow && (run.Kind == RunKind.Supply || figures.HeatOf(run) is not null))
            ? figures.Run(run, form == LabelForm.Narrow)
            : "";
        var lines = ImmutableArray.CreateBuilder<TextLine>();
        if (form == LabelForm.Wide)
        {
            lines.Add(new([id, new(" · " + size + (rest.Length > 0 ? " · " + rest : ""))]));
        }
        else
        {
            lines.Add(new([id, new(" · " + size)]));
            if (rest.Length > 0)
            {
                lines.Add(TextLine.Of(rest));
            }
        }

        if (computed.Length > 0)
        {
            lines.Add(TextLine.Of(computed, TextEmphasis.Computed));
        }

        return lines.ToImmutable();
    }

    /// <summary>What a wire does, as a customer would say it.</summary>
    public static string Plain(RunKind kind) => kind switch
    {
        RunKind.Supply => "power",
        RunKind.Ground => "ground",
        RunKind.Line => "signal",
        RunKind.Speaker => "speaker",
        _ => "switch-on",
    };

    /// <summary>The kind as the drawing marks it.</summary>
    public static string Kind(RunKind kind) => kind switch
    {
        RunKind.Supply => "supply",
        RunKind.Ground => "ground",
        RunKind.Line => "line",
        RunKind.Speaker => "speaker",
        _ => "control",
    };

    /// <summary>The whole wire in words.</summary>
    public static string AccessibleText(WiredRun run) =>
        $"{run.Id}: {Plain(run.Kind)}, "
        + GearDrawing.Join(Size(run), run.Wire.ColorWords, Length(run), run.InVehicle ? "already in the vehicle" : "") + ", from "
        + $"{string.Join(" and ", run.From.Select(e => e.Id))} to {string.Join(" and ", run.To.Select(e => e.Id))}";

    /// <summary>Thickness to draw a conductor in: from 16 mm², from 5 mm², from 1.3 mm², thinner.</summary>
    public static int Step(WiredRun run) => run.Wire.IsLinePair ? 2 : run.Wire.Size.Area.Value switch
    {
        >= 16 => 4,
        >= 5 => 3,
        >= 1.3 => 2,
        _ => 1,
    };

    /// <summary>Main color and tracer of one core, counted from 0; of cores that are all alike those of any.</summary>
    public static ImmutableArray<ConductorColor> Colors(WiredRun run, int core)
    {
        var cores = run.Wire.CoreColors;
        return Known(cores.IsEmpty ? run.Wire.Colors : cores[Math.Clamp(core, 0, cores.Length - 1)]);
    }

    /// <summary>Every color that the label names, each once.</summary>
    public static ImmutableArray<ConductorColor> AllColors(WiredRun run) =>
        run.Wire.CoreColors.IsEmpty ? Known(run.Wire.Colors) : [.. run.Wire.CoreColors.SelectMany(c => Known(c)).Distinct()];

    private static ImmutableArray<ConductorColor> Known(ImmutableArray<string> names) => [
        .. names.Select(ConductorColor.Of).OfType<ConductorColor>()
    ];

    private static string Size(WiredRun run) =>
        run.Wire.IsLinePair ? "line pair" : run.Wire.SizeWords.Replace("mm2", "mm²", StringComparison.Ordinal);

    private static string Color(WiredRun run) => run.Wire.CoreColors.IsEmpty
        ? Codes(run.Wire.Colors)
        : string.Join(" + ", run.Wire.CoreColors.Select(Codes));

    private static string Codes(ImmutableArray<string> colors) => string.Join('/', Known(colors).Select(c => c.Code));

    /// <summary>Its length as written, or as its path gives it; empty if nothing does.</summary>
    public static string Length(WiredRun run) =>
        run.Length is not { } length ? ""
        : run.Run.Length?.Words is { } words ? words
        : run.Route.Any(r => r.Path.Length?.Words.TrimEnd().EndsWith('m') == true) ? Quantity.Print(length)
        : $"{Quantity.Digits(length.Inches / 12, 3)} ft";
}
