using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A stiffening capacitor.</summary>
public sealed record Capacitor : Gear
{
    public override string Kind => "capacitor";

    /// <summary>Its positive terminal.</summary>
    public static TerminalShape Positive { get; } = Node("+", TerminalRole.Supply, TerminalFlow.In);

    /// <summary>Its negative terminal.</summary>
    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Positive, Negative];

    public Written<Farads>? Capacity { get; init; }

    public Written<Ohms>? Internal { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

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

    public override Landing LandingAt(TerminalShape terminal) => Landing.UsualStud("M8 stud");

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Capacitor,
        Family = DeviceFamily.Source,
        Form = DrawnForm.Box,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = Capacity?.Words ?? "",
        PlainWords = Kind,
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(Capacity?.Words, Internal is { } inside ? $"{inside.Words} inside" : null),
    };

    public override ImmutableArray<GearCaution> Cautions => [GearCaution.HoldsCharge];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static Capacitor Read(Fields f) => new()
    {
        Name = f.Key,
        Capacity = f.Amount<Farads>(
            "capacity",
            "capacitance; stands in the lists, and changes nothing that is computed: no current flows into a charged capacitor"),
        Internal = f.Amount<Ohms>(
            "internal",
            "series resistance; stands in the lists, and changes nothing that is computed: no current flows into a charged capacitor"),
    };
}
