using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A resistor that loads a source.</summary>
public sealed record LoadResistor : Gear
{
    public override string Kind => "load resistor";

    /// <summary>The left one of a pair of resistors.</summary>
    public static TerminalShape Left { get; } = Pair("left", TerminalRole.Speaker, TerminalFlow.In);

    /// <summary>The right one.</summary>
    public static TerminalShape Right { get; } = Pair("right", TerminalRole.Speaker, TerminalFlow.In);

    /// <summary>One end of a single resistor.</summary>
    public static TerminalShape First { get; } = Node("1", TerminalRole.Speaker, TerminalFlow.In);

    /// <summary>Its other end.</summary>
    public static TerminalShape Second { get; } = Node("2", TerminalRole.Speaker, TerminalFlow.In);

    public override ImmutableArray<TerminalShape> Terminals => Channels == 2 ? [Left, Right] : [First, Second];

    public int Channels { get; init; } = 1;

    /// <summary>The pair or group it lies across, where no runs are written for it.</summary>
    public Written<string>? Across { get; init; }

    public Written<Ohms>? Resistance { get; init; }

    public Written<Watts>? Handles { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins => Across is { } across ? [new AcrossJoin(across, Terminals)] : [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => true;

    public override ImmutableArray<SpeakerPart> SpeakerParts =>
        Resistance is not { } ohms ? []
        : Channels == 2 ? [new ResistorPart(Left, null, ohms.Value), new ResistorPart(Right, null, ohms.Value)]
            : [new ResistorPart(First, Second, ohms.Value)];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => Channels == 1 ? [First, Second] : [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Blade;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Resistor,
        Family = DeviceFamily.SoundDevice,
        Form = DrawnForm.Box,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join("load resistor", Resistance?.Words.Replace("ohm", "Ω", StringComparison.Ordinal)),
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = GearListing.Known(Resistance?.Words, Handles?.Words) };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static LoadResistor Read(Fields f)
    {
        f.Require("resistance");
        return ReadFacts(f);
    }

    private static LoadResistor ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Channels = f.Count("channels", "one resistor, or a pair for left and right", "1", most: 2)?.Value ?? 1,
        Across = f.Text("across", "the pair or group it lies across, instead of runs"),
        Resistance = f.Amount<Ohms>("resistance", "its resistance"),
        Handles = f.Amount<Watts>("handles", "its power rating"),
    };
}
