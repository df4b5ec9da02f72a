using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A switch.</summary>
public sealed record Switch : Gear
{
    public override string Kind => "switch";

    public static TerminalShape In { get; } = Node("in", TerminalRole.Any, TerminalFlow.In);

    public static TerminalShape Out { get; } = Node("out", TerminalRole.Any, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [In, Out];

    public Written<Amps>? Rating { get; init; }

    public ImmutableArray<Written<SystemState>> Closed { get; init; } = [];

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins =>
    [
        new TerminalJoin
        {
            Kind = ConnectionKind.Switch,
            First = In,
            Second = Out,
            ClosedIn = Closed.IsEmpty ? SystemStates.Awake : [.. Closed.Select(c => c.Value)],
            Rating = Rating,
        },
    ];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Blade;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Switch,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.Box,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = Kind,
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = GearListing.Known(Rating?.Words) };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static Switch Read(Fields f) => new()
    {
        Name = f.Key,
        Rating = f.Amount<Amps>("rating", "what it carries"),
        Closed = f.Choices("closed", "states in which it is closed", SystemStates.Words),
    };
}
