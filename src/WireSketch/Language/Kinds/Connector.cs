using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A plug: each cavity is one node.</summary>
public sealed record Connector : Gear
{
    public override string Kind => "connector";

    /// <summary>A cavity, by its number from 1.</summary>
    public static TerminalShape Cavity(int number) => Node(number.ToString(CultureInfo.InvariantCulture), TerminalRole.Any);

    public override ImmutableArray<TerminalShape> Terminals => [.. Enumerable.Range(1, Cavities).Select(Cavity)];

    public int Cavities { get; init; }

    public Written<WireSize>? Gauge { get; init; }

    public Written<Amps>? Rating { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => true;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => new(LandingForm.PlugContact, "", false) { Thickest = Gauge };

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Plug,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.Box,
        IsHub = false,
        HasFreeSides = false,
        PlaysSound = false,
        PlugsIn = false,
        Words = Kind,
        PlainWords = Kind,
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(
            Cavities == 1 ? "1 cavity" : string.Create(CultureInfo.InvariantCulture, $"{Cavities} cavities"),
            Rating?.Words),
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => new() { Each = Rating };

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static Connector Read(Fields f) => new()
    {
        Name = f.Key,
        Cavities = f.Count("cavities", "number of cavities", "1")?.Value ?? 1,
        Gauge = f.Size("gauge", "thickest wire a cavity takes"),
        Rating = f.Amount<Amps>("rating", "what a cavity carries"),
    };
}
