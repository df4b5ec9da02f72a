using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Which sizes of wire a terminal takes.</summary>
internal static class TerminalSizes
{
    /// <summary>The end of a run whose terminal does not take a size; null if all take it.</summary>
    public static RunEnd? Refusing(WiredRun run, WireSize size) =>
        run.From.Concat(run.To).FirstOrDefault(e => Fits(e) is { } fits && !Takes(fits.Range, size));

    public static (Range<WireSize> Range, string Words)? Fits(RunEnd end) =>
        end.Gear.PowerInputs.Select(p => IsOf(p, end) ? p.Fits : null).FirstOrDefault(f => f is not null) is { } fits
            ? (fits.Value, fits.Words)
        : end.Gear.LandingAt(end.Shape).Thickest is { } thickest
            ? (new(WireSize.FromAwg(40), thickest.Value), $"{thickest.Words} at most")
        : null;

    private static bool IsOf(PowerInput input, RunEnd end) => input.Plus == end.Shape || input.Minus == end.Shape;

    /// <summary>With room for sizes of the two systems that are sold for each other, such as 4 AWG and 21 mm2.</summary>
    public static bool Takes(Range<WireSize> range, WireSize size) =>
        size.Area.Value <= range.Most.Area.Value * 1.08 && size.Area.Value >= range.Least.Area.Value / 1.08;
}
