using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A speaker or subwoofer: one or more coils on one cone.</summary>
public sealed record Speaker : Gear
{
    public override string Kind => Subwoofer ? "subwoofer" : "speaker";

    /// <summary>A voice coil, by its number from 1.</summary>
    public static TerminalShape Coil(int number) =>
        Pair("coil." + number.ToString(CultureInfo.InvariantCulture), TerminalRole.Speaker, TerminalFlow.In);

    /// <summary>All its coils.</summary>
    public TerminalShape AllCoils =>
        new("coils", TerminalForm.Group, TerminalRole.Speaker, TerminalFlow.In, [.. Enumerable.Range(1, CoilCount).Select(Coil)]);

    public override ImmutableArray<TerminalShape> Terminals => [.. Enumerable.Range(1, CoilCount).Select(Coil), AllCoils];

    public bool Subwoofer { get; init; }

    public Written<Multiple<Ohms>>? Coils { get; init; }

    public int CoilCount => Math.Clamp(Coils?.Value.Count ?? 1, 1, 64);

    /// <summary>Nominal impedance of one coil.</summary>
    public Ohms CoilImpedance => Coils?.Value.Each ?? new Ohms(4);

    public Written<Ohms>? DcResistance { get; init; }

    /// <summary>Power for the driver, shared by its coils.</summary>
    public Written<Watts>? Handles { get; init; }

    public Written<SpeakerBand>? Band { get; init; }

    public Written<EnclosureType>? EnclosureType { get; init; }

    public Written<Hertz>? Tuned { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts =>
        [.. Enumerable.Range(1, CoilCount).Select(n => new VoiceCoil(Coil(n), this, n))];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [AllCoils];

    public override ImmutableArray<TerminalAlias> Aliases =>
        CoilCount != 1
        ? []
        :
        [
            new("coil", AllCoils, ' '),
            .. new[] { "+", "coil.+", "coils.+" }.Select(name => new TerminalAlias(name, Coil(1), '+')),
            .. new[] { "-", "coil.-", "coils.-" }.Select(name => new TerminalAlias(name, Coil(1), '-')),
        ];

    public override Landing LandingAt(TerminalShape terminal) => new(LandingForm.PushOn, "to suit the speaker", false);

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.Left;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Speaker,
        Family = DeviceFamily.Speaker,
        Form = DrawnForm.EndPoint,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = Subwoofer && EnclosureType is { } box
            ? GearDrawing.Join("subwoofer", box.Words + (Tuned is { } f ? " " + f.Words : ""))
            : Band?.Words ?? Kind,
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = GearListing.Known(Coils?.Words, Handles?.Words) };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static Speaker Read(Fields f, bool subwoofer)
    {
        var enclosure = f.Map("enclosure", "the box it is in", e => new Enclosure(
            e.Choice("type", "kind of box", EnclosureTypes.Words), e.Amount<Hertz>("tuned", "tuning of a vented or bandpass box")));
        return new()
        {
            Name = f.Key,
            Subwoofer = subwoofer,
            Coils = f.AmountMultiple<Ohms>("coils", "its voice coils, nominal, such as 2 x 4 ohm; one coil of 4 ohm if absent"),
            DcResistance = f.Amount<Ohms>("dc-resistance", "resistance of one coil as a meter shows it"),
            Handles = f.Amount<Watts>("handles", "continuous power for the driver, shared by its coils"),
            Band = f.Choice("band", "what it plays", SpeakerBands.Words),
            EnclosureType = enclosure?.Type,
            Tuned = enclosure?.Tuned,
        };
    }

    private sealed record Enclosure(Written<EnclosureType>? Type, Written<Hertz>? Tuned);
}

/// <summary>What a speaker plays.</summary>
public enum SpeakerBand
{
    Tweeter,
    Midrange,
    Midbass,
    Woofer,
    FullRange,
}

/// <summary>The words of <see cref="SpeakerBand"/>.</summary>
public static class SpeakerBands
{
    public static ChoiceWords<SpeakerBand> Words { get; } = new(
        (SpeakerBand.Tweeter, "tweeter"),
        (SpeakerBand.Midrange, "midrange"),
        (SpeakerBand.Midbass, "midbass"),
        (SpeakerBand.Woofer, "woofer"),
        (SpeakerBand.FullRange, "full range"));
}

/// <summary>The box that a speaker is in.</summary>
public enum EnclosureType
{
    Sealed,
    Vented,
    Bandpass,
    FreeAir,
}

/// <summary>The words of <see cref="EnclosureType"/>.</summary>
public static class EnclosureTypes
{
    public static ChoiceWords<EnclosureType> Words { get; } = new(
        (EnclosureType.Sealed, "sealed"),
        (EnclosureType.Vented, "vented"),
        (EnclosureType.Bandpass, "bandpass"),
        (EnclosureType.FreeAir, "free air"));
}
