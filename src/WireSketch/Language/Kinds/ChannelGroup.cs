using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A group of channels that a device puts out or takes in.</summary>
public sealed record ChannelGroup
{
    public required Written<string> Name { get; init; }

    public SignalLevel Level { get; init; } = SignalLevel.Line;

    public int Channels { get; init; } = 2;

    public Written<Volts>? Maximum { get; init; }

    /// <summary>Lowest frequency at which it still gives its full level.</summary>
    public Written<Hertz>? Lowest { get; init; }

    public ChannelSettings Settings { get; init; } = ChannelSettings.None;

    internal TerminalShape Shape(TerminalFlow flow) =>
        Group(Name.Value, Level == SignalLevel.Speaker ? TerminalRole.Speaker : TerminalRole.Line, flow, ChannelNames(Channels));

    internal static ChannelGroup Read(Fields f) => new()
    {
        Name = f.Key,
        Level = f.Choice("level", "line or speaker level", SignalLevels.Words, "line")?.Value ?? SignalLevel.Line,
        Channels = f.Count("channels", "number of channels: 1 is mono; 2 left, right; 4 fl, fr, rl, rr; others are numbered", "2")?.Value
            ?? 2,
        Maximum = f.Amount<Volts>("maximum", "highest voltage, rms"),
        Lowest = f.Amount<Hertz>("lowest", "lowest frequency that it carries"),
        Settings = f.Map("settings", "what the installer sets on it", ChannelSettings.Read) ?? ChannelSettings.None,
    };
}

/// <summary>The level of a signal.</summary>
public enum SignalLevel
{
    Line,
    Speaker,
}

/// <summary>The words of <see cref="SignalLevel"/>.</summary>
public static class SignalLevels
{
    public static ChoiceWords<SignalLevel> Words { get; } = new((SignalLevel.Line, "line"), (SignalLevel.Speaker, "speaker"));
}
