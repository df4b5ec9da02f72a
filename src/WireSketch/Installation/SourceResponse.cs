using System.Collections.Immutable;
using WireSketch.Electrical.Responses;
using WireSketch.Language;

namespace WireSketch.Installation;

/// <summary>A response of the spec as a curve.</summary>
/// <param name="Response">As written.</param>
/// <param name="At">Where it was measured.</param>
/// <param name="Volume">At which setting.</param>
/// <param name="Curve">Its levels, counted from its own middle.</param>
internal sealed record SourceResponse(Response Response, string At, string Volume, ResponseCurve Curve)
{
    /// <summary>Every response with levels, in the order of the spec; one without any level in the middle tells nothing.</summary>
    public static ImmutableArray<SourceResponse> Of(Spec spec) => [.. spec.Responses.Select(Of).OfType<SourceResponse>()];

    private static SourceResponse? Of(Response response) =>
        response is { At: { } at, Volume: { } volume }
            && ResponseCurve.Of(response.Levels.Select(l => new BandLevel(l.Key.Value, l.Value.Value))) is { } curve
            ? new(response, at.Value, volume.Value, curve)
            : null;
}
