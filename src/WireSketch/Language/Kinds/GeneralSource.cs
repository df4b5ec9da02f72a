using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>Solar, shore or DC-DC charger.</summary>
public sealed record GeneralSource : Gear
{
    public override string Kind => "general source";

    /// <summary>Its positive terminal.</summary>
    public static TerminalShape Positive { get; } = Node("+", TerminalRole.Supply, TerminalFlow.Out);

    /// <summary>Its negative terminal.</summary>
    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Positive, Negative];

    public Written<Volts>? Voltage { get; init; }

    public Written<Amps>? Current { get; init; }

    public Written<Share>? Duty { get; init; }

    public Written<Seconds>? Hours { get; init; }

    public override ImmutableArray<SupplySource> Sources =>
    [
        new ChargerSource
        {
            Plus = Positive,
            Minus = Negative,
            LiveIn = SystemStates.All,
            Voltage = Voltage,
            Current = Current,
            Duty = Duty,
            Hours = Hours,
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

    public override ImmutableArray<TerminalShape> Alone => [Positive, Negative];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Source,
        Family = DeviceFamily.Source,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join(Voltage?.Words, Current?.Words),
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = GearListing.Known(Current?.Words) };

    public override ImmutableArray<GearCaution> Cautions => [GearCaution.OwnCurrent];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static GeneralSource Read(Fields f)
    {
        f.Choose(needed: false, "duty", "hours");
        return ReadFacts(f);
    }

    private static GeneralSource ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Voltage = f.Amount<Volts>("voltage", "the voltage it regulates to", "14.2 V"),
        Current = f.Amount<Amps>("current", "the most it gives"),
        Duty = f.Amount<Share>("duty", "share of the time it gives that", zero: true),
        Hours = f.Amount<Seconds>("hours", "hours a day it gives that", zero: true),
    };
}
