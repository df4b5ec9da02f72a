using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A signal processor.</summary>
public sealed record Processor : Gear
{
    public override string Kind => "processor";

    /// <summary>Its positive terminal.</summary>
    public static TerminalShape Positive { get; } = Node("+", TerminalRole.Supply, TerminalFlow.In);

    /// <summary>Its negative terminal.</summary>
    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    /// <summary>By which it is switched on.</summary>
    public static TerminalShape RemoteIn { get; } = Node("remote-in", TerminalRole.Control, TerminalFlow.In);

    /// <summary>By which it switches others on.</summary>
    public static TerminalShape RemoteOut { get; } = Node("remote-out", TerminalRole.Control, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals =>
        [
            Positive,
            Negative,
            RemoteIn,
            RemoteOut,
            .. Inputs.Select(o => o.Shape(TerminalFlow.In)),
            .. Outputs.Select(o => o.Shape(TerminalFlow.Out))
        ];

    public ImmutableArray<ChannelGroup> Inputs { get; init; } = [];

    public ImmutableArray<ChannelGroup> Outputs { get; init; } = [];

    public SupplyProperties Supply { get; init; } = SupplyProperties.None;

    public Written<Amps>? Standby { get; init; }

    public Written<Amps>? RemoteLimit { get; init; }

    public ImmutableArray<Written<WakeMode>> WakesOn { get; init; } = [];

    public ChannelSettings Settings { get; init; } = ChannelSettings.None;

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs =>
    [
        new()
        {
            Plus = Positive, Minus = Negative, IsOptional = false, IsCritical = true, OwnFuse = Supply.Fuse, Fits = Supply.Fits,
            Takes = new ElectronicsDraw { Current = Supply.Current, Usual = new(1), Standby = Standby },
        },
    ];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs =>
        [new() { Terminal = RemoteIn, Current = null, Sleep = new(Settings.Wake, WakesOn) }];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs =>
        [new() { Terminal = RemoteOut, FedFrom = Positive, Limit = RemoteLimit }];

    public override ImmutableArray<SignalInput> SignalInputs =>
        [.. Inputs.SelectMany(i => i.Shape(TerminalFlow.In).Members.Select(channel => InputOf(i, channel)))];

    public override ImmutableArray<SignalOutput> SignalOutputs =>
    [
        .. Outputs.SelectMany(o => o.Shape(TerminalFlow.Out).Members.Select(channel => new SignalOutput
        {
            Terminal = channel,
            Group = o.Name.Value,
            DeclaredAt = o.Name.At,
            MayBeFirst = false,
            Level = o.Level,
            CarriesOn = [.. SignalInputs.Select(i => i.Terminal)],
            Maximum = o.Maximum,
            Settings = o.Settings,
        })),
    ];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => Settings;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Processor,
        Family = DeviceFamily.SoundDevice,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = false,
        PlaysSound = false,
        PlugsIn = false,
        Words = Kind,
        PlainWords = "sound processor",
        Settings = [("", Settings), .. Outputs.Select(o => (o.Name.Value, o.Settings))],
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = [] };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    private static SignalInput InputOf(ChannelGroup group, TerminalShape channel)
    {
        Range<Volts>? range = group.Maximum is { } most ? new(new(0), most.Value) : null;
        return new()
        {
            Terminal = channel,
            Line = new(group.Level == SignalLevel.Line, range, group.Maximum?.At),
            Speaker = new(group.Level == SignalLevel.Speaker, range, group.Maximum?.At),
            Usual = group.Level,
            SwitchedLoad = null,
        };
    }

    internal static Processor Read(Fields f) => new()
    {
        Name = f.Key,
        Inputs = f.Each("inputs", "its groups of input channels; a single one is usually named in", ChannelGroup.Read),
        Outputs = f.Each("outputs", "its groups of output channels", ChannelGroup.Read),
        Supply = f.Map("supply", "what it takes", SupplyProperties.Read) ?? SupplyProperties.None,
        Standby = f.Amount<Amps>("standby", "draw while asleep", zero: true),
        RemoteLimit = f.Amount<Amps>("remote-limit", "the most that its remote output supplies", "0.5 A (common practice)"),
        WakesOn = f.Choices("wakes-on", "what can wake it", WakeModes.Words),
        Settings = f.Map("settings", "what the installer sets on it", ChannelSettings.Read) ?? ChannelSettings.None,
    };
}
