using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>Joins two batteries while charging and parts them otherwise.</summary>
public sealed record Isolator : Gear
{
    public override string Kind => "isolator";

    /// <summary>Towards the battery that is charged first.</summary>
    public static TerminalShape Main { get; } = Node("main", TerminalRole.Supply);

    /// <summary>Towards the battery that is charged through it.</summary>
    public static TerminalShape Second { get; } = Node("second", TerminalRole.Supply);

    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Main, Second, Negative];

    public Written<IsolatorType>? Type { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<Volts>? Drop { get; init; }

    public ImmutableArray<Written<SystemState>> Closed { get; init; } = [];

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins =>
    [
        new TerminalJoin
        {
            Kind = Type?.Value == IsolatorType.Diode ? ConnectionKind.Diode : ConnectionKind.Switch, First = Main, Second = Second,
            ClosedIn = Closed.IsEmpty ? SystemStates.Awake : [.. Closed.Select(c => c.Value)], Rating = Rating, Drop = Drop,
            Batteries = new(PullsInAgainst: Type?.Value == IsolatorType.Diode ? null : Negative),
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

    public override Landing LandingAt(TerminalShape terminal) => Landing.UsualStud("M8 stud");

    public override DrawnSide SideOf(TerminalShape terminal) =>
        terminal == Main ? DrawnSide.Left : terminal == Second ? DrawnSide.Right : DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Isolator,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join("isolator", Type?.Words, Rating?.Words),
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = GearListing.Known(Type?.Words, Rating?.Words) };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.Covered;

    internal static Isolator Read(Fields f) => new()
    {
        Name = f.Key,
        Type = f.Choice("type", "how it works", IsolatorTypes.Words, "relay"),
        Rating = f.Amount<Amps>("rating", "what it carries"),
        Drop = f.Amount<Volts>("drop", "volts lost across it", "0.7 V for a diode, else none", zero: true),
        Closed = f.Choices("closed", "states in which it joins the batteries", SystemStates.Words),
    };
}

/// <summary>How an isolator works.</summary>
public enum IsolatorType
{
    Relay,
    Diode,
    VoltageSensing,
}

/// <summary>The words of <see cref="IsolatorType"/>.</summary>
public static class IsolatorTypes
{
    public static ChoiceWords<IsolatorType> Words { get; } = new(
        (IsolatorType.Relay, "relay"),
        (IsolatorType.Diode, "diode"),
        (IsolatorType.VoltageSensing, "voltage sensing"));
}
