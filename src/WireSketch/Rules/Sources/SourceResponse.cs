using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Sources;

/// <summary>A measured response, counted from its own middle.</summary>
/// <param name="Response">As written.</param>
/// <param name="At">Where it was measured.</param>
/// <param name="Volume">At which setting.</param>
/// <param name="Levels">Decibels above or below the mean of the middle, by hertz.</param>
internal sealed record SourceResponse(Response Response, string At, string Volume, ImmutableSortedDictionary<double, double> Levels)
{
    /// <summary>The middle of the band, which nothing cuts (common practice, no published source).</summary>
    private const double MiddleFrom = 200;

    private const double MiddleTo = 2000;

    /// <summary>Every response with levels, in the order of the spec; one without any level in the middle tells nothing.</summary>
    public static ImmutableArray<SourceResponse> Of(Spec spec) =>
        [.. spec.Responses.Where(r => r is { At: not null, Volume: not null } && r.Levels.Any(l => IsMiddle(l.Key.Value.Value))).Select(Of)];

    /// <summary>The frequency at which it falls below the middle by so much, going down; null if it does not, as far as it was measured.</summary>
    public Hertz? LowCorner(Decibels down) => Corner([.. Levels.Where(l => l.Key <= MiddleTo).OrderByDescending(l => l.Key)], down.Value);

    /// <summary>The same, going up.</summary>
    public Hertz? HighCorner(Decibels down) => Corner([.. Levels.Where(l => l.Key >= MiddleFrom)], down.Value);

    private static SourceResponse Of(Response response)
    {
        var middle = response.Levels.Where(l => IsMiddle(l.Key.Value.Value)).Average(l => l.Value.Value.Value);
        var levels = response.Levels.DistinctBy(l => l.Key.Value.Value).ToImmutableSortedDictionary(l => l.Key.Value.Value, l => l.Value.Value.Value - middle);
        return new(response, response.At!.Value.Value, response.Volume!.Value.Value, levels);
    }

    private static bool IsMiddle(double hertz) => hertz is >= MiddleFrom and <= MiddleTo;

    /// <summary>Between two bands it is taken as straight over the logarithm of frequency.</summary>
    private static Hertz? Corner(KeyValuePair<double, double>[] outward, double down)
    {
        for (var i = 1; i < outward.Length; i++)
        {
            var ((near, inside), (far, outside)) = (outward[i - 1], outward[i]);
            if (inside >= -down && outside < -down)
            {
                var share = (inside + down) / (inside - outside);
                return new Hertz(near * Math.Pow(far / near, share));
            }
        }

        return null;
    }
}
