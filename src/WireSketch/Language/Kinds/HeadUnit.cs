using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A radio or other head unit.</summary>
public sealed record HeadUnit : Gear
{
    public override string Kind => "head unit";

    /// <summary>Its constant supply.</summary>
    public static TerminalShape Battery { get; } = Node("battery", TerminalRole.Supply, TerminalFlow.In);

    /// <summary>What switches it on.</summary>
    public static TerminalShape Accessory { get; } = Node("accessory", TerminalRole.Control, TerminalFlow.In);

    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    /// <summary>By which it switches others on.</summary>
    public static TerminalShape Remote { get; } = Node("remote", TerminalRole.Control, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals =>
        [Battery, Accessory, Negative, Remote, .. Outputs.Select(o => o.Shape(TerminalFlow.Out))];

    public ImmutableArray<ChannelGroup> Outputs { get; init; } = [];

    public Written<Amps>? RemoteLimit { get; init; }

    /// <summary>The source falls silent if it sees less load than this many ohms would be.</summary>
    public Written<Ohms>? MutesWithoutLoad { get; init; }

    /// <summary>Its speaker outputs carry a DC offset while it plays, by which a device can wake.</summary>
    public bool? DcOffset { get; init; }

    public Written<Amps>? Current { get; init; }

    public Written<Amps>? Standby { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs =>
    [
        new()
        {
            Plus = Battery, Minus = Negative, IsOptional = false, IsCritical = true, OwnFuse = null, Fits = null,
            Takes = new ElectronicsDraw { Current = Current, Usual = new(5), Standby = Standby },
        },
    ];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [new() { Terminal = Accessory, Current = null, Sleep = null }];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs =>
        [new() { Terminal = Remote, FedFrom = Battery, Limit = RemoteLimit }];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs =>
    [
        .. Outputs.SelectMany(o => o.Shape(TerminalFlow.Out).Members.Select(channel => new SignalOutput
        {
            Terminal = channel,
            Group = o.Name.Value,
            DeclaredAt = o.Name.At,
            MayBeFirst = true,
            Level = o.Level,
            CarriesOn = [],
            Maximum = o.Maximum,
            Lowest = o.Lowest,
            DrivesSpeakers = o.Level == SignalLevel.Speaker,
            MutesWithoutLoad = MutesWithoutLoad,
            HasDcOffset = o.Level == SignalLevel.Speaker && DcOffset != false,
            Settings = o.Settings,
        })),
    ];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => new(LandingForm.PlugLead, "", false);

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.HeadUnit,
        Family = DeviceFamily.SoundDevice,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = false,
        PlaysSound = true,
        PlugsIn = false,
        Words = Kind,
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = [] };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static HeadUnit Read(Fields f)
    {
        var behavior = f.Map("behavior", "how it behaves as a source", b => new SourceBehavior(
            b.Amount<Ohms>("mutes-without-load", "falls silent unless each channel sees a load of about this"),
            b.Flag("dc-offset", "its speaker outputs carry a DC offset while it plays", "true")?.Value));
        return new()
        {
            Name = f.Key,
            Outputs = f.Each("outputs", "its groups of output channels", ChannelGroup.Read),
            RemoteLimit = f.Amount<Amps>("remote-limit", "the most that its remote output supplies", "0.5 A (common practice)"),
            MutesWithoutLoad = behavior?.Mutes,
            DcOffset = behavior?.Offset,
            Current = f.Amount<Amps>("current", "draw while playing", "5 A (common practice)"),
            Standby = f.Amount<Amps>("standby", "draw while asleep", zero: true),
        };
    }

    private sealed record SourceBehavior(Written<Ohms>? Mutes, bool? Offset);
}
