using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>One output channel of an amplifier.</summary>
public sealed record AmplifierChannel
{
    public required Written<string> Name { get; init; }

    /// <summary>Power by load.</summary>
    public ImmutableArray<(Written<Ohms> Key, Written<Watts> Value)> Power { get; init; } = [];

    public Written<Ohms>? Minimum { get; init; }

    /// <summary>The channel that this one may be bridged with.</summary>
    public Written<string>? BridgesWith { get; init; }

    public ImmutableArray<(Written<Ohms> Key, Written<Watts> Value)> Bridged { get; init; } = [];

    public Written<Ohms>? BridgedMinimum { get; init; }

    public ChannelSettings Settings { get; init; } = ChannelSettings.None;

    internal static AmplifierChannel Read(Fields f) => new()
    {
        Name = f.Key,
        Power = f.Table<Ohms, Watts>("power", "power by load, such as { 4 ohm: 75 W, 2 ohm: 110 W }"),
        Minimum = f.Amount<Ohms>("minimum", "lowest load it may drive", "the lowest load in power"),
        BridgesWith = f.Text("bridges-with", "the channel it may be bridged with"),
        Bridged = f.Table<Ohms, Watts>("bridged", "power by load when bridged"),
        BridgedMinimum = f.Amount<Ohms>("bridged-minimum", "lowest load when bridged", "twice the minimum of its halves"),
        Settings = f.Map("settings", "what the installer sets on it", ChannelSettings.Read) ?? ChannelSettings.None,
    };
}

/// <summary>An amplifier.</summary>
public sealed record Amplifier : Gear
{
    public override string Kind => "amplifier";

    public override ImmutableArray<TerminalShape> Terminals =>
    [
        Node("+", TerminalRole.Supply, TerminalFlow.In), Node("-", TerminalRole.Ground), Node("remote", TerminalRole.Control, TerminalFlow.In),
        Group("in", TerminalRole.Line, TerminalFlow.In, Channels.Length == 1 ? ["left", "right"] : Channels.Select(c => c.Name.Value)),
        .. Channels.Select(c => Pair(c.Name.Value, TerminalRole.Speaker, TerminalFlow.Out)),
    ];

    public SupplyProperties Supply { get; init; } = SupplyProperties.None;

    /// <summary>Class of operation, such as D.</summary>
    public Written<string>? Class { get; init; }

    /// <summary>Line-level range of its input.</summary>
    public Written<Range<Volts>>? InputLine { get; init; }

    /// <summary>Speaker-level range of its input, if it takes one.</summary>
    public Written<Range<Volts>>? InputSpeaker { get; init; }

    /// <summary>The load that its input puts on the source when its switch is on.</summary>
    public Written<Ohms>? InputLoad { get; init; }

    public ImmutableArray<AmplifierChannel> Channels { get; init; } = [];

    public ImmutableArray<Written<WakeMode>> WakesOn { get; init; } = [];

    public ChannelSettings Settings { get; init; } = ChannelSettings.None;

    public Written<Amps>? Idle { get; init; }

    public Written<Amps>? Standby { get; init; }

    /// <summary>What its remote terminal takes.</summary>
    public Written<Amps>? RemoteCurrent { get; init; }

    internal static Amplifier Read(Fields f)
    {
        f.Require("channels");
        var input = f.Map("input", "what its input takes", i => new Input(
            i.AmountRange<Volts>("line", "range of line level for full output"),
            i.AmountRange<Volts>("speaker", "range of speaker level for full output, if it takes one"),
            i.Amount<Ohms>("load", "the load it puts on the source when input-load is on")));
        return new()
        {
            Name = f.Key,
            Supply = f.Map("supply", "what it takes", SupplyProperties.Read) ?? SupplyProperties.None,
            Class = f.Text("class", "class of operation, such as D"),
            InputLine = input?.Line,
            InputSpeaker = input?.Speaker,
            InputLoad = input?.Load,
            Channels = f.Each("channels", "its output channels, by the names of your choice", AmplifierChannel.Read),
            WakesOn = f.Choices("wakes-on", "what can wake it", WakeModes.Words),
            Settings = f.Map("settings", "what the installer sets on it", ChannelSettings.Read) ?? ChannelSettings.None,
            Idle = f.Amount<Amps>("idle", "draw with no signal", "1 A (common practice)", zero: true),
            Standby = f.Amount<Amps>("standby", "draw while asleep", zero: true),
            RemoteCurrent = f.Amount<Amps>("remote-current", "what its remote terminal takes", "20 mA (common practice)", zero: true),
        };
    }

    private sealed record Input(Written<Range<Volts>>? Line, Written<Range<Volts>>? Speaker, Written<Ohms>? Load);
}
