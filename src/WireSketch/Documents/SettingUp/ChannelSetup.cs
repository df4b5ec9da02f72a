using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Documents.SettingUp;

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

    /// <summary>
    /// Where a subwoofer hands over to the other speakers, to begin with; 40 to 160 Hz is usual (common practice, no published source).
    /// </summary>
    private static readonly Hertz HandOver = new(80);

    /// <summary>
    /// The subsonic filter of a vented box starts a third of an octave below its tuning (common practice, no published source).
    /// </summary>
    private static readonly double ThirdOfOctave = Exact.Cbrt(2);

    /// <summary>Every amplifier channel with a load, in the order of the spec.</summary>
    public static ImmutableArray<ChannelSetup> From(InstalledSystem install)
    {
        var hasSubwoofer = install.Answers.Channels.Any(c => c.Coils.Any(x => x.Speaker.Subwoofer));
        return [
            .. install.Answers.Channels.Where(c => c.Output.Amplifies is not null && c.Loaded is not null && c.Fault == LoadFault.None)
                .Select(c => Of(install, c, hasSubwoofer))
        ];
    }

    /// <summary>Volts to set with a tone that was recorded below full scale.</summary>
    /// <param name="recorded">The level it was recorded at, 0 dB or below.</param>
    public Volts? TargetFor(Decibels recorded) => Target is { } v ? v * recorded.VoltageRatio : null;

    private static ChannelSetup Of(InstalledSystem install, ChannelResult answer, bool hasSubwoofer)
    {
        var own = answer.Output.Settings;
        var all = answer.Gear.DeviceSettings;
        var before = SignalFeeds.InputsOf(install, answer)
            .SelectMany(i =>
                SignalFeeds.SettingsOf(install, i).Select(s => (Settings: s, Device: SignalFeeds.SourceOf(install, i).Gear?.Id ?? "")))
            .Distinct()
            .ToArray();
        var drivers = answer.Coils.Select(c => c.Speaker).Distinct().ToArray();
        var isSubwoofer = drivers.Any(d => d.Subwoofer);
        var needsHighPass = drivers.Any(d => d.Band?.Value is SpeakerBand.Tweeter or SpeakerBand.Midrange);

        // A filter stands at the amplifier or in the processor ahead of it: both are named, and the one that cuts more counts.
        var highPasses = Settings(s => s.HighPass).ToArray();
        var lowPasses = Settings(s => s.LowPass).ToArray();
        var subsonics = Settings(s => s.Subsonic).ToArray();
        var corner = highPasses.Select(h => h.Value.Value.Value).DefaultIfEmpty(0).Max();
        var top = lowPasses.Select(l => l.Value.Value.Value).DefaultIfEmpty(double.PositiveInfinity).Min();
        var tone = isSubwoofer ? SubwooferTone : ToneWithin(corner, top);
        var passive = drivers.Select(d => ChannelFilters.HighPassOf(install, answer, d)).Any(h => h is not null);
        var highPass = Words(highPasses)
            ?? (needsHighPass && !passive ? "as the speaker's maker says: it must have one"
                : !isSubwoofer && hasSubwoofer ? $"{HandOver} to begin with"
                : "–");
        var lowPass = Words(lowPasses) ?? (isSubwoofer ? $"{HandOver} to begin with" : "–");
        var tuned = drivers.Where(d => d.EnclosureType?.Value == EnclosureType.Vented)
            .Select(d => d.Tuned?.Value)
            .FirstOrDefault(t => t is not null);
        var subsonic = Words(subsonics) ?? (tuned is { } t ? $"{new Hertz(Math.Round(t.Value / ThirdOfOctave))} to begin with" : "–");
        var boosts = Settings(s => s.Boost).ToArray();
        var boost = Math.Max(0, (own.BoostBy ?? all.BoostBy)?.Value ?? 0) + before.Sum(b => Math.Max(0, b.Settings.BoostBy?.Value ?? 0));
        return new(
            $"{answer.Gear.Id}.{answer.Channel}",
            answer.Loaded!.Value,
            tone,
            answer.TargetVolts is { } v ? v * new Decibels(-boost).VoltageRatio : null,
            highPass,
            lowPass,
            subsonic,
            [
                .. boost > 0
                    ? new[] { $"boost {Words(boosts)}: the target is {new Decibels(boost)} lower, measured with the boost off" }
                    : [],
                .. answer.BridgedWith is { } other
                    ? new[] { $"bridged with {other}: measure between + of one and - of the other, and set both alike" }
                    : [],
                .. tone > UsualTone
                    ? new[] { "tone within its band: unplug the tweeter while you set it, such a tone burns it in seconds" }
                    : [],
                .. new[]
                {
                    Note("gain", Words(Settings(s => s.Gain))),
                    Note("polarity", Words(Settings(s => s.Polarity))),
                    Note("delay", Words(Settings(s => s.Delay))),
                    Note("input load", (own.InputLoad ?? all.InputLoad)?.Words),
                }.OfType<string>(),
            ]);

        IEnumerable<(string Device, Written<T> Value)> Settings<T>(Func<ChannelSettings, Written<T>?> of) =>
            new[] { (Device: "", Value: of(own) ?? of(all)) }
                .Concat(before.Select(b => (b.Device, Value: of(b.Settings))))
                .Where(x => x.Value is not null)
                .Select(x => (x.Device, x.Value!.Value))
                .Distinct();
    }

    /// <summary>
    /// The usual tone where it lies an octave within the band; else one octave inside the corner, or in the middle between both.
    /// </summary>
    private static Hertz ToneWithin(double from, double to) =>
        from * 2 <= UsualTone.Value && to >= UsualTone.Value * 2 ? UsualTone
        : double.IsPositiveInfinity(to) ? new(Math.Ceiling(from * 2 / 100) * 100)
        : new(Math.Round((from > 0 ? Math.Sqrt(from * to) : to / 2) / 10) * 10);

    /// <summary>Settings as they are written; with the device where it is not the amplifier. Null where there is none.</summary>
    private static string? Words<T>(IEnumerable<(string Device, Written<T> Value)> settings)
    {
        var words = string.Join(", ", settings.Select(s => s.Device.Length == 0 ? s.Value.Words : $"{s.Value.Words} at {s.Device}"));
        return words.Length == 0 ? null : words;
    }

    private static string? Note(string what, string? setting) => setting is null ? null : $"{what}: {setting}";
}
