using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Which sizes of wire a terminal takes.</summary>
internal static class TerminalSizes
{
    /// <summary>The end of a run whose terminal does not take a size; null if all take it.</summary>
    public static RunEnd? Refusing(WiredRun run, WireSize size) =>
        run.From.Concat(run.To).FirstOrDefault(e => Fits(e) is { } fits && !Takes(fits.Range, size));

    public static (Range<WireSize> Range, string Words)? Fits(RunEnd end) => end.Gear switch
    {
        Amplifier { Supply.Fits: { } fits } when IsSupply(end) => (fits.Value, fits.Words),
        Processor { Supply.Fits: { } fits } when IsSupply(end) => (fits.Value, fits.Words),
        Connector { Gauge: { } gauge } => (new(WireSize.FromAwg(40), gauge.Value), $"{gauge.Words} at most"),
        _ => null,
    };

    private static bool IsSupply(RunEnd end) =>
        end.Shape.Form == TerminalForm.Node && end.Shape.Role is TerminalRole.Supply or TerminalRole.Ground;

    /// <summary>With room for sizes of the two systems that are sold for each other, such as 4 AWG and 21 mm2.</summary>
    public static bool Takes(Range<WireSize> range, WireSize size) =>
        size.Area.Value <= range.Most.Area.Value * 1.08 && size.Area.Value >= range.Least.Area.Value / 1.08;
}
