using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A block that divides a cable without fuses.</summary>
public sealed record DistributionBlock : Gear
{
    public override string Kind => "distribution block";

    public static TerminalShape In { get; } = Node("in", TerminalRole.Any, TerminalFlow.In);

    /// <summary>An output, by its number from 1.</summary>
    public static TerminalShape Output(int number) =>
        Node("out." + number.ToString(CultureInfo.InvariantCulture), TerminalRole.Any, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals => [In, .. Enumerable.Range(1, Outputs).Select(Output)];

    public int Outputs { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<Range<WireSize>>? Fits { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins =>
        [
            .. Enumerable.Range(1, Outputs)
                .Select(n =>
                    new TerminalJoin
                    {
                        Kind = ConnectionKind.Joint, First = In, Second = Output(n), ClosedIn = SystemStates.All, Rating = Rating
                    })
        ];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => true;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Block,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = Kind,
        PlainWords = "cable joint",
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(GearListing.Count(Outputs, "output"), Rating?.Words),
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => new() { Fits = Fits, Whole = Rating };

    public override StudCover StudCover => StudCover.Open;

    internal static DistributionBlock Read(Fields f) => new()
    {
        Name = f.Key,
        Outputs = f.Count("outputs", "number of outputs", "2")?.Value ?? 2,
        Rating = f.Amount<Amps>("rating", "what it carries in all"),
        Fits = f.SizeRange("fits", "the cable it takes"),
    };
}
