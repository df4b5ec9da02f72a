using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>A band of a third of an octave.</summary>
/// <param name="Nominal">Its label.</param>
/// <param name="Middle">Its exact mid-band frequency.</param>
/// <param name="Lower">Its lower edge.</param>
/// <param name="Upper">Its upper edge.</param>
internal sealed record ThirdOctave(Hertz Nominal, Hertz Middle, Hertz Lower, Hertz Upper)
{
    /// <summary>20 Hz to 20 kHz, base ten: IEC 61260-1.</summary>
    public static ImmutableArray<ThirdOctave> Bands { get; } =
        [.. CsvTable.Own("third-octave").Rows.Select(r => new ThirdOctave(
            new(r.Number("nominal_hz")), new(r.Number("exact_base10_hz")), new(r.Number("lower_edge_hz")), new(r.Number("upper_edge_hz"))))
        ];
}
