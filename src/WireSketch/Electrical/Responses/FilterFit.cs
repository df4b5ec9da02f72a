using WireSketch.Quantities;

namespace WireSketch.Electrical.Responses;

/// <summary>
/// The filter that a response looks like: of Butterworth filters of order 1 to 8, the one with the least squared error. Its level at a
/// frequency f is -10 lg(1 + (fc/f)^2n) for a high-pass and -10 lg(1 + (f/fc)^2n) for a low-pass (Butterworth's formula, in any
/// textbook of filters; Lessons in Electric Circuits vol. II ch. 8 for the first order).
/// </summary>
/// <param name="IsHighPass">It takes the bass away; else the treble.</param>
/// <param name="Corner">Where it is 3 dB down.</param>
/// <param name="Order">Its order; each adds 6 dB per octave.</param>
/// <param name="Error">Root mean square of what is left.</param>
public sealed record FilterFit(bool IsHighPass, Hertz Corner, int Order, Decibels Error)
{
    private const int MostOrder = 8;

    /// <summary>Steps of the search in an octave; the best is refined afterwards.</summary>
    private const int StepsPerOctave = 24;

    /// <summary>Below this the floor of meter and recording counts more than the filter (common practice, no published source).</summary>
    private const double Floor = -40;

    /// <summary>How steep it is: 6 dB per octave for each order, in round figures.</summary>
    public Decibels PerOctave => new(6 * Order);

    /// <summary>The high-pass that the lower end of a response looks like; null if that end is not cut or too few bands show it.</summary>
    public static FilterFit? HighPass(ResponseCurve curve) => Of([.. curve.Levels.Where(l => l.At.Value <= 2000)], highPass: true);

    /// <summary>The low-pass that the upper end of a response looks like; null if that end is not cut or too few bands show it.</summary>
    public static FilterFit? LowPass(ResponseCurve curve) => Of([.. curve.Levels.Where(l => l.At.Value >= 200)], highPass: false);

    /// <summary>The level of a Butterworth filter against its pass band.</summary>
    /// <param name="ratio">Frequency over corner for a low-pass, corner over frequency for a high-pass.</param>
    /// <param name="order">Its order.</param>
    public static Decibels LevelOf(double ratio, int order) => new(-10 * Exact.Log10(1 + Exact.Pow(ratio, 2 * order)));

    private static FilterFit? Of(BandLevel[] levels, bool highPass)
    {
        var used = levels.Where(l => l.Level.Value >= Floor).ToArray();
        if (used.Count(l => l.Level.Value <= -3) < 2 || used.Length < 4)
        {
            return null;
        }

        var (low, high) = (Exact.Log2(used[0].At.Value) - 1, Exact.Log2(used[^1].At.Value) + 1);
        FilterFit? best = null;
        for (var order = 1; order <= MostOrder; order++)
        {
            var at = Enumerable.Range(0, (int)((high - low) * StepsPerOctave) + 1)
                .Select(i => low + ((double)i / StepsPerOctave))
                .MinBy(x => Off(used, x, order, highPass).Error);
            var fine = Enumerable.Range(-20, 41)
                .Select(i => at + (i / (20.0 * StepsPerOctave)))
                .MinBy(x => Off(used, x, order, highPass).Error);
            var error = Math.Sqrt(Off(used, fine, order, highPass).Error / used.Length);
            if (best is null || error < best.Error.Value - 1e-9)
            {
                best = new(highPass, new(Exact.Pow(2, fine)), order, new(error));
            }
        }

        return best;
    }

    /// <summary>Squared error, the level of the pass band being free.</summary>
    private static (double Error, double Gain) Off(BandLevel[] levels, double logCorner, int order, bool highPass)
    {
        var corner = Exact.Pow(2, logCorner);
        var rest = levels.Select(l => l.Level.Value - LevelOf(highPass ? corner / l.At.Value : l.At.Value / corner, order).Value).ToArray();
        var gain = rest.Average();
        return (rest.Sum(r => (r - gain) * (r - gain)), gain);
    }
}
