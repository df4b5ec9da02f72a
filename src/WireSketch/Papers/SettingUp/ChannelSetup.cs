using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Electrical;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Rules;

namespace WireSketch.Papers.SettingUp;

/// <summary>What to set on one amplifier channel, to begin with.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Load">The load it sees.</param>
/// <param name="Tone">The test tone.</param>
/// <param name="Target">Volts at the output with a tone recorded at full scale, boost allowed for; null if unknown.</param>
/// <param name="HighPass">Where the high-pass stands, in words.</param>
/// <param name="LowPass">Where the low-pass stands, in words.</param>
/// <param name="Subsonic">Where the subsonic filter stands, in words.</param>
/// <param name="Remarks">What else to know.</param>
public sealed record ChannelSetup(
    string Channel, Ohms Load, Hertz Tone, Volts? Target, string HighPass, string LowPass, string Subsonic, ImmutableArray<string> Remarks)
{
    /// <summary>Tones for setting the gain (common practice, no published source).</summary>
    private static readonly Hertz SubwooferTone = new(50);

    private static readonly Hertz UsualTone = new(1000);

    /// <summary>Where a subwoofer hands over to the other speakers, to begin with; 40 to 160 Hz is usual (common practice, no published source).</summary>
    private static readonly Hertz HandOver = new(80);

    /// <summary>The subsonic filter of a vented box starts a third of an octave below its tuning (common practice, no published source).</summary>
    private static readonly double ThirdOfOctave = Math.Cbrt(2);

    /// <summary>Every amplifier channel with a load, in the order of the spec.</summary>
    public static ImmutableArray<ChannelSetup> From(Install install)
    {
        var hasSubwoofer = install.Answers.Channels.Any(c => c.Coils.Any(x => x.Speaker.Subwoofer));
        return [.. install.Answers.Channels.Where(c => c.Gear is Amplifier && c.Loaded is not null && c.Fault == LoadFault.None).Select(c => Of(c, hasSubwoofer))];
    }

    /// <summary>Volts to set with a tone that was recorded below full scale.</summary>
    /// <param name="recorded">The level it was recorded at, 0 dB or below.</param>
    public Volts? TargetFor(Decibels recorded) => Target is { } v ? v * Math.Pow(10, recorded.Value / 20) : null;

    private static ChannelSetup Of(ChannelAnswer answer, bool hasSubwoofer)
    {
        var amplifier = (Amplifier)answer.Gear;
        var own = amplifier.Channels.First(c => c.Name.Value == answer.Channel).Settings;
        var all = amplifier.Settings;
        var drivers = answer.Coils.Select(c => c.Speaker).Distinct().ToArray();
        var isSubwoofer = drivers.Any(d => d.Subwoofer);
        var needsHighPass = drivers.Any(d => d.Band?.Value is "tweeter" or "midrange");
        var remarks = ImmutableArray.CreateBuilder<string>();
        var boost = BoostOf((own.Boost ?? all.Boost)?.Value);
        if (boost > 0)
        {
            remarks.Add($"boost {(own.Boost ?? all.Boost)!.Value}: the target is {new Decibels(boost)} lower, measured with the boost off");
        }

        if (answer.BridgedWith is { } other)
        {
            remarks.Add($"bridged with {other}: measure between + of one and - of the other, and set both alike");
        }

        var written = own.HighPass ?? all.HighPass;
        var tone = isSubwoofer ? SubwooferTone : written is { } hp && hp.Value.Value * 2 > UsualTone.Value ? new(Math.Ceiling(hp.Value.Value * 2 / 100) * 100) : UsualTone;
        var highPass = written?.Words ?? (needsHighPass ? "as the speaker's maker says: it must have one" : !isSubwoofer && hasSubwoofer ? $"{HandOver} to begin with" : "–");
        var lowPass = (own.LowPass ?? all.LowPass)?.Words ?? (isSubwoofer ? $"{HandOver} to begin with" : "–");
        var tuned = drivers.Where(d => d.EnclosureType?.Value == "vented").Select(d => d.Tuned?.Value).FirstOrDefault(t => t is not null);
        var subsonic = (own.Subsonic ?? all.Subsonic)?.Words ?? (tuned is { } t ? $"{new Hertz(Math.Round(t.Value / ThirdOfOctave))} to begin with" : "–");
        remarks.AddRange(new[] { Note("gain", own.Gain ?? all.Gain), Note("polarity", own.Polarity ?? all.Polarity) }.OfType<string>().ToArray());
        return new(
            $"{answer.Gear.Id}.{answer.Channel}", answer.Loaded!.Value, tone, answer.TargetVolts is { } v ? v * Math.Pow(10, -boost / 20) : null, highPass, lowPass, subsonic,
            remarks.ToImmutable());
    }

    private static string? Note(string what, Written<string>? setting) => setting is { } s ? $"{what}: {s.Value}" : null;

    /// <summary>The decibels of <c>6 dB at 45 Hz</c>; nothing where none are written.</summary>
    private static double BoostOf(string? words) =>
        words?.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [var number, "dB", ..] && double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var db) ? Math.Max(0, db)
        : words?.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [{ Length: > 2 } joined, ..] && joined.EndsWith("dB", StringComparison.Ordinal)
            && double.TryParse(joined[..^2], NumberStyles.Float, CultureInfo.InvariantCulture, out var d) ? Math.Max(0, d) : 0;
}
