using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A bus bar or ground block: one node for any number of runs.</summary>
public sealed record BusBar : Gear
{
    public override string Kind => Ground ? "ground block" : "bus bar";

    /// <summary>Its one node.</summary>
    public TerminalShape Bar => Node("", Ground ? TerminalRole.Ground : TerminalRole.Any);

    public override ImmutableArray<TerminalShape> Terminals => [Bar];

    public bool Ground { get; init; }

    public Written<int>? Studs { get; init; }

    public Written<Amps>? Rating { get; init; }

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

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.UsualStud("M8 stud");

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.FacingPartner;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Block,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.Bar,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join(Kind, Rating?.Words),
        PlainWords = "cable joint",
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(Studs is { } studs ? GearListing.Count(studs.Value, "stud") : null, Rating?.Words),
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => new() { Lugs = Studs, Whole = Rating };

    public override StudCover StudCover => Ground ? StudCover.NoneOpen : StudCover.Open;

    internal static BusBar Read(Fields f, bool ground) => new()
    {
        Name = f.Key,
        Ground = ground,
        Studs = f.Count("studs", "the most runs it takes"),
        Rating = f.Amount<Amps>("rating", "what it carries"),
    };
}
