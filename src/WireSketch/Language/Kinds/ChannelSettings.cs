using WireSketch.Quantities;

namespace WireSketch.Language.Kinds;

/// <summary>What the installer sets on a device or one of its channels.</summary>
public sealed record ChannelSettings
{
    public static ChannelSettings None { get; } = new();

    public Written<Hertz>? HighPass { get; init; }

    public Written<Hertz>? LowPass { get; init; }

    public Written<Hertz>? Subsonic { get; init; }

    /// <summary>As the installer would note it: volts of sensitivity, decibels, or a mark on the dial.</summary>
    public Written<string>? Gain { get; init; }

    /// <summary>Such as <c>6 dB at 45 Hz</c>.</summary>
    public Written<string>? Boost { get; init; }

    /// <summary>How much the boost lifts.</summary>
    public Decibels? BoostBy { get; init; }

    /// <summary>The frequency at which it lifts; null if it is not written.</summary>
    public Hertz? BoostAt { get; init; }

    public Written<Polarity>? Polarity { get; init; }

    public Written<Seconds>? Delay { get; init; }

    public Written<WakeMode>? Wake { get; init; }

    public Written<InputLoadSwitch>? InputLoad { get; init; }

    internal static ChannelSettings Read(Fields f)
    {
        var boost = f.Text("boost", "bass boost, such as 6 dB at 45 Hz");
        var settings = ReadFacts(f) with { Boost = boost };
        if (boost is not { } words)
        {
            return settings;
        }

        var halves = words.Value.Split(" at ", 2);
        Hertz corner = default;
        if (Quantity.TryRead<Decibels>(halves[0], out var by, out _)
            && (halves.Length == 1 || Quantity.TryRead(halves[1], out corner, out _)))
        {
            return settings with { BoostBy = by, BoostAt = halves.Length == 1 ? null : corner };
        }

        f.Report(new(
            "spec/unit",
            Diagnostics.Severity.Error,
            $"\"{words.Value}\" is no boost: a level in dB, and the frequency in Hz at which it lifts",
            words.At)
        { Help = "write boost: 6 dB at 45 Hz" });
        return settings;
    }

    private static ChannelSettings ReadFacts(Fields f) => new()
    {
        HighPass = f.Amount<Hertz>("high-pass", "corner of the high-pass filter"),
        LowPass = f.Amount<Hertz>("low-pass", "corner of the low-pass filter"),
        Subsonic = f.Amount<Hertz>("subsonic", "corner of the subsonic filter"),
        Gain = f.Text("gain", "where the gain stands"),
        Polarity = f.Choice("polarity", "polarity switch", Polarities.Words, "normal"),
        Delay = f.Amount<Seconds>("delay", "time delay", zero: true),
        Wake = f.Choice("wake", "what wakes it, as its switch is set", WakeModes.Words, "remote"),
        InputLoad = f.Choice(
            "input-load",
            "switch that puts a load on the source, as printed on the device",
            InputLoadSwitches.Words,
            "off"),
    };
}

/// <summary>A polarity switch.</summary>
public enum Polarity
{
    Normal,
    Reversed,
}

/// <summary>The words of <see cref="Polarity"/>.</summary>
public static class Polarities
{
    public static ChoiceWords<Polarity> Words { get; } = new((Polarity.Normal, "normal"), (Polarity.Reversed, "reversed"));
}

/// <summary>What wakes a device.</summary>
public enum WakeMode
{
    Remote,
    DcOffset,
    Signal,
    Accessory,
    Always,
}

/// <summary>The words of <see cref="WakeMode"/>.</summary>
public static class WakeModes
{
    public static ChoiceWords<WakeMode> Words { get; } = new(
        (WakeMode.Remote, "remote"),
        (WakeMode.DcOffset, "dc offset"),
        (WakeMode.Signal, "signal"),
        (WakeMode.Accessory, "accessory"),
        (WakeMode.Always, "always"));
}

/// <summary>The switch that puts a load on the source, as printed on the device.</summary>
public enum InputLoadSwitch
{
    On,
    Off,
}

/// <summary>The words of <see cref="InputLoadSwitch"/>.</summary>
public static class InputLoadSwitches
{
    public static ChoiceWords<InputLoadSwitch> Words { get; } = new((InputLoadSwitch.On, "on"), (InputLoadSwitch.Off, "off"));
}
