using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A vehicle circuit that is live when the ignition or accessory switch says so.</summary>
public sealed record IgnitionSource : Gear
{
    public override string Kind => "ignition source";

    public static TerminalShape Wire { get; } = Node("", TerminalRole.Supply, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Wire];

    public Written<CircuitLive>? Live { get; init; }

    public Written<Volts>? Voltage { get; init; }

    public Written<Amps>? Limit { get; init; }

    public override ImmutableArray<SupplySource> Sources =>
    [
        new VehicleCircuit
        {
            Plus = Wire,
            Minus = null,
            Voltage = Voltage,
            Limit = Limit,
            IsSignalOnly = false,
            IsStartCircuit = Live?.Value == CircuitLive.Start,
            LiveIn = Live?.Value switch
            {
                CircuitLive.Constant => SystemStates.All,
                CircuitLive.Start => SystemStates.None,
                _ => SystemStates.Awake,
            },
        },
    ];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Splice;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.Right;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Tap,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.EndPoint,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join("vehicle circuit", Live?.Words ?? "accessory"),
        PlainWords = "vehicle wiring",
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.PlaceOnVehicle,
        Facts = [],
        Connection = new() { Color = null, Connector = null, Cavity = null, Carries = Live?.Words ?? "accessory", Limit = Limit },
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static IgnitionSource Read(Fields f) => new()
    {
        Name = f.Key,
        Live = f.Choice("live", "when it is live", CircuitLives.Words, "accessory"),
        Voltage = f.Amount<Volts>("voltage", "its voltage", "the battery's"),
        Limit = f.Amount<Amps>("limit", "the most that may be taken from it", "0.5 A for waking (common practice)"),
    };
}

/// <summary>When a circuit of the vehicle is live.</summary>
public enum CircuitLive
{
    Constant,
    Accessory,
    Ignition,
    Start,
}

/// <summary>The words of <see cref="CircuitLive"/>.</summary>
public static class CircuitLives
{
    public static ChoiceWords<CircuitLive> Words { get; } = new(
        (CircuitLive.Constant, "constant"),
        (CircuitLive.Accessory, "accessory"),
        (CircuitLive.Ignition, "ignition"),
        (CircuitLive.Start, "start"));
}
