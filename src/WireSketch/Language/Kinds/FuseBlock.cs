using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using WireSketch.Tables;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A block of fuses with a common input.</summary>
public sealed record FuseBlock : Gear
{
    public override string Kind => "fuse block";

    public static TerminalShape In { get; } = Node("in", TerminalRole.Supply, TerminalFlow.In);

    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    /// <summary>An output, by its number from 1.</summary>
    public static TerminalShape Output(int number) =>
        Node("out." + number.ToString(CultureInfo.InvariantCulture), TerminalRole.Supply, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals => [In, .. Enumerable.Range(1, Outputs).Select(Output), Negative];

    public int Outputs { get; init; }

    public ImmutableArray<(Written<int> Key, Written<Amps> Value)> Fuses { get; init; } = [];

    public Written<FuseStyle>? Style { get; init; }

    public Written<Amps>? Rating { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins => [.. Enumerable.Range(1, Outputs).Select(Fuse)];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => true;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => terminal == In ? Landing.UsualStud("M6 stud") : Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Fuse,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join("fuse block", Style?.Words),
        PlainWords = "fuses",
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(GearListing.Count(Outputs, "output"), Rating?.Words),
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => new() { Whole = Rating };

    public override StudCover StudCover => StudCover.Open;

    private TerminalJoin Fuse(int number) => new()
    {
        Suffix = "." + number.ToString(CultureInfo.InvariantCulture),
        Kind = ConnectionKind.Fuse,
        First = In,
        Second = Output(number),
        ClosedIn = SystemStates.All,
        Rating = Fuses.Where(f => f.Key.Value == number).Select(f => (Written<Amps>?)f.Value).FirstOrDefault(),
        Style = Style,
        FuseMayStandAtRun = true,
    };

    internal static FuseBlock Read(Fields f)
    {
        f.RequireAny("outputs", "fuses");
        var fuses = f.Numbered<Amps>("fuses", "rating of the fuse at each output");
        var highest = fuses.Select(x => x.Key.Value).DefaultIfEmpty(0).Max();
        var outputs = f.Count("outputs", "number of outputs", "the highest number in fuses");
        if (outputs is { } written && highest > written.Value)
        {
            var beyond = fuses.First(x => x.Key.Value == highest).Key;
            f.Report(new(
                "spec/value",
                Diagnostics.Severity.Error,
                $"output {highest} has a fuse, but the block has {written.Value} outputs",
                beyond.At));
        }

        return new()
        {
            Name = f.Key,
            Outputs = outputs?.Value ?? highest,
            Fuses = fuses,
            Style = f.Choice("style", "construction of its fuses", FuseStyles.Words, "the smallest that comes in that rating"),
            Rating = f.Amount<Amps>("rating", "what the block carries in all"),
        };
    }
}
