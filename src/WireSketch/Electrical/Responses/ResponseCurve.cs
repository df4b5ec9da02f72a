using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Electrical.Responses;

/// <summary>A level at a frequency.</summary>
public readonly record struct BandLevel(Hertz At, Decibels Level);

/// <summary>
/// A measured response, counted from its own middle, so that neither the gain of the meter nor the volume matters. Frequencies that name a
/// third-octave band stand for the exact middle of that band (IEC 61260-1, base ten).
/// </summary>
/// <param name="Levels">Levels by rising frequency, 0 dB being the mean of the middle.</param>
public sealed record ResponseCurve(ImmutableArray<BandLevel> Levels)
{
    /// <summary>The middle of the band, which no crossover of a source cuts (common practice, no published source).</summary>
    private static readonly Hertz MiddleFrom = new(200);

    private static readonly Hertz MiddleTo = new(2000);

    /// <summary>The curve of measured levels; null if none of them lies in the middle, 200 Hz to 2 kHz.</summary>
    public static ResponseCurve? Of(IEnumerable<BandLevel> measured)
    {
        var levels = measured.Select(l => l with { At = MiddleOf(l.At) }).DistinctBy(l => l.At.Value).OrderBy(l => l.At).ToArray();
        var middle = levels.Where(l => l.At >= MiddleFrom && l.At <= MiddleTo).ToArray();
        if (middle.Length == 0)
        {
            return null;
        }

        var mean = middle.Average(l => l.Level.Value);
        return new([.. levels.Select(l => l with { Level = new Decibels(l.Level.Value - mean) })]);
    }

    /// <summary>The exact middle of the band that a frequency names; the frequency itself if it names none.</summary>
    public static Hertz MiddleOf(Hertz label) =>
        ThirdOctave.Bands.FirstOrDefault(b => Math.Abs(b.Nominal.Value - label.Value) < 1e-6 * label.Value)?.Middle ?? label;

    /// <summary>What a frequency is called: the label of its band, if it is the middle of one.</summary>
    public static Hertz Label(Hertz frequency) => ThirdOctave.Bands.FirstOrDefault(b => b.Middle == frequency)?.Nominal ?? frequency;

    /// <summary>The level at a frequency; null if it was not measured there.</summary>
    public Decibels? At(Hertz frequency)
    {
        foreach (var level in Levels)
        {
            if (level.At == MiddleOf(frequency))
            {
                return level.Level;
            }
        }

        return null;
    }

    /// <summary>Where, going down from the middle, it falls so far below it; null if it does not, as far as it was measured.</summary>
    public Hertz? LowCorner(Decibels down) => Corner([.. Levels.Where(l => l.At <= MiddleTo).Reverse()], down);

    /// <summary>The same, going up.</summary>
    public Hertz? HighCorner(Decibels down) => Corner([.. Levels.Where(l => l.At >= MiddleFrom)], down);

    /// <summary>Between two bands it is taken as straight over the logarithm of frequency.</summary>
    private static Hertz? Corner(BandLevel[] outward, Decibels down)
    {
        for (var i = 1; i < outward.Length; i++)
        {
            var (near, far) = (outward[i - 1], outward[i]);
            if (near.Level >= -down && far.Level < -down)
            {
                var share = (near.Level + down) / (near.Level - far.Level);
                return new Hertz(near.At.Value * Exact.Pow(far.At / near.At, share));
            }
        }

        return null;
    }
}
