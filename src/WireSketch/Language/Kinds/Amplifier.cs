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

    /// <summary>Its positive terminal.</summary>
    public static TerminalShape Positive { get; } = Node("+", TerminalRole.Supply, TerminalFlow.In);

    /// <summary>Its negative terminal.</summary>
    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    /// <summary>By which it is switched on.</summary>
    public static TerminalShape Remote { get; } = Node("remote", TerminalRole.Control, TerminalFlow.In);

    public TerminalShape In =>
        Group("in", TerminalRole.Line, TerminalFlow.In, Channels.Length == 1 ? ["left", "right"] : Channels.Select(c => c.Name.Value));

    /// <summary>The terminals of a channel.</summary>
    public static TerminalShape Output(AmplifierChannel channel) => Pair(channel.Name.Value, TerminalRole.Speaker, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals =>
        [Positive, Negative, Remote, In, .. Channels.Select(Output)];

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

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs =>
    [
        new()
        {
            Plus = Positive, Minus = Negative, IsOptional = false, IsCritical = true, OwnFuse = Supply.Fuse, Fits = Supply.Fits,
            Takes = new OutputDraw
            {
                Idle = Idle, Standby = Standby, Current = Supply.Current, Fuse = Supply.Fuse, Efficiency = Supply.Efficiency,
                IsClassD = string.Equals(Class?.Value, "D", StringComparison.OrdinalIgnoreCase),
                StatesPower = Channels.Any(c => !c.Power.IsEmpty || !c.Bridged.IsEmpty),
            },
        },
    ];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs =>
        [new() { Terminal = Remote, Current = RemoteCurrent, Sleep = new(Settings.Wake, WakesOn) }];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs =>
    [
        .. In.Members.Select(channel => new SignalInput
        {
            Terminal = channel,
            Line = new(InputLine is not null || InputSpeaker is null, InputLine?.Value, InputLine?.At),
            Speaker = new(InputSpeaker is not null, InputSpeaker?.Value, InputSpeaker?.At),
            Usual = SignalLevel.Line,
            SwitchedLoad = InputLoad,
        }),
    ];

    public override ImmutableArray<SignalOutput> SignalOutputs =>
    [
        .. Channels.Select(c => new SignalOutput
        {
            Terminal = Output(c),
            Group = c.Name.Value,
            DeclaredAt = c.Name.At,
            MayBeFirst = true,
            Level = SignalLevel.Speaker,
            CarriesOn = [.. In.Members],
            Amplifies = c,
            DrivesSpeakers = true,
            HasDcOffset = InVehicle,
            Settings = c.Settings,
        }),
    ];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts =>
        Settings.InputLoad?.Value == InputLoadSwitch.On && InputLoad is { Value.Value: > 0 } load
        ? [.. In.Members.Select(channel => new InputLoadPart(channel, load.Value, OnlyFromSpeakerLevel: true))]
        : [];

    public override ChannelSettings DeviceSettings => Settings;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Amplifier,
        Family = DeviceFamily.SoundDevice,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = false,
        PlaysSound = true,
        PlugsIn = false,
        Words = Class is { } letter ? $"amplifier, class {letter.Value}" : Kind,
        PlainWords = Kind,
        Settings = [("", Settings), .. Channels.Select(c => (c.Name.Value, c.Settings))],
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(GearListing.Count(Channels.Length, "channel")),
    };

    public override ImmutableArray<GearCaution> Cautions => [GearCaution.LoudSound];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

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
