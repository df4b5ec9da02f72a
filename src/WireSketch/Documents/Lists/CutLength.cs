using System.Globalization;
using WireSketch.Documents.Formats;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Documents.Lists;

/// <summary>How long a piece is cut: slack added, then rounded up; and in which units that is said.</summary>
/// <param name="SlackShare">Slack as a share of the length.</param>
/// <param name="SlackLength">Slack as a length.</param>
/// <param name="Step">Cut lengths are multiples of this.</param>
/// <param name="IsMetric">Whether the spec thinks in meters.</param>
public sealed record CutLength(Share SlackShare, Meters SlackLength, Meters Step, bool IsMetric)
{
    /// <summary>Lengths closer than this to a multiple are that multiple: they differ by arithmetic only.</summary>
    private const double Tolerance = 1e-6;

    /// <summary>What a spec's settings ask for.</summary>
    public static CutLength Of(Spec spec)
    {
        var settings = spec.Settings;
        var first = spec.Runs.Select(r => r.Length?.Words).FirstOrDefault(w => w is not null)
            ?? spec.Paths.Select(p => p.Length?.Words).FirstOrDefault(w => w is not null);
        var metric = first?.TrimEnd().EndsWith('m') ?? false;
        var written = settings.SlackShare is not null || settings.SlackLength is not null;
        return new(
            settings.SlackShare?.Value ?? (written ? new Share(0) : Assume.Slack.Value),
            settings.SlackLength?.Value ?? new Meters(0),
            settings.RoundTo is { Value.Value: > 0 } round ? round.Value : metric ? new Meters(0.01) : Meters.FromInches(1),
            metric);
    }

    /// <summary>The length to cut for a length as drawn; nothing for nothing.</summary>
    public Meters For(Meters length)
    {
        if (length.Value <= 0)
        {
            return new(0);
        }

        var wanted = (length * (1 + SlackShare.Value)) + SlackLength;
        return Step * Math.Ceiling((wanted / Step) - Tolerance);
    }

    /// <summary>A length in the spec's own system first, the other in brackets: <c>18 ft 9 in (5.715 m)</c>.</summary>
    public string Both(Meters length) => IsMetric ? $"{Metric(length)} ({American(length)})" : $"{American(length)} ({Metric(length)})";

    /// <summary>A length in the spec's own system.</summary>
    public string One(Meters length) => IsMetric ? Metric(length) : American(length);

    private static string Metric(Meters length) => Math.Abs(length.Value) < 1
        ? string.Create(CultureInfo.InvariantCulture, $"{PlainTable.Number(length.Value * 100, 1)} cm")
        : string.Create(CultureInfo.InvariantCulture, $"{PlainTable.Number(length.Value, 3)} m");

    private static string American(Meters length)
    {
        var inches = Math.Round(length.Inches, 1, MidpointRounding.AwayFromZero);
        var feet = Math.Floor(inches / 12);
        var rest = PlainTable.Number(inches - (feet * 12), 1);
        return (feet, rest) switch
        {
            (0, _) => $"{rest} in",
            (_, "0") => string.Create(CultureInfo.InvariantCulture, $"{feet} ft"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{feet} ft {rest} in"),
        };
    }
}
