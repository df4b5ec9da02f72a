using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A battery.</summary>
public sealed record Battery : Gear
{
    public override string Kind => "battery";

    /// <summary>Its positive terminal.</summary>
    public static TerminalShape Positive { get; } = Node("+", TerminalRole.Supply, TerminalFlow.Out);

    /// <summary>Its negative terminal.</summary>
    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Positive, Negative];

    public Written<AmpHours>? Capacity { get; init; }

    public Written<Ohms>? Internal { get; init; }

    public Written<Chemistry>? Chemistry { get; init; }

    public Written<Volts>? Rest { get; init; }

    public Written<string>? Post { get; init; }

    public override ImmutableArray<SupplySource> Sources =>
    [
        new BatterySource
        {
            Plus = Positive,
            Minus = Negative,
            LiveIn = SystemStates.All,
            Capacity = Capacity,
            Internal = Internal,
            Chemistry = Chemistry,
            Rest = Rest,
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

    public override Landing LandingAt(TerminalShape terminal) =>
        Post is { } post ? new(LandingForm.Stud, post.Value, false) : Landing.UsualStud("M8 stud");

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Battery,
        Family = DeviceFamily.Source,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join(Capacity?.Words, Chemistry?.Words),
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = GearListing.Known(Chemistry?.Words, Capacity?.Words) };

    public override ImmutableArray<GearCaution> Cautions => [GearCaution.BatteryPosts];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.Covered;

    internal static Battery Read(Fields f) => new()
    {
        Name = f.Key,
        Capacity = f.Amount<AmpHours>("capacity", "capacity at the 20 h rate", "60 Ah (common practice)"),
        Internal = f.Amount<Ohms>(
            "internal",
            "internal resistance",
            "8 mohm for 60 Ah, in inverse proportion to the capacity (common practice)"),
        Chemistry = f.Choice("chemistry", "kind of cells", Chemistries.Words, "flooded"),
        Rest = f.Amount<Volts>("rest", "volts at rest, charged", "12.6 V; AGM and gel 12.8 V; lithium 13.2 V (common practice)"),
        Post = f.Text("post", "kind or size of its posts, for the terminals to buy"),
    };
}

/// <summary>Kind of a battery's cells.</summary>
public enum Chemistry
{
    Flooded,
    Agm,
    Gel,
    Lithium,
}

/// <summary>The words of <see cref="Chemistry"/>.</summary>
public static class Chemistries
{
    public static ChoiceWords<Chemistry> Words { get; } = new(
        (Chemistry.Flooded, "flooded"),
        (Chemistry.Agm, "AGM"),
        (Chemistry.Gel, "gel"),
        (Chemistry.Lithium, "lithium"));
}
