using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Tables;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A fuse or circuit breaker that stands by itself.</summary>
public sealed record ProtectiveDevice : Gear
{
    public override string Kind => Breaker ? "breaker" : "fuse";

    public static TerminalShape In { get; } = Node("in", TerminalRole.Supply, TerminalFlow.In);

    public static TerminalShape Out { get; } = Node("out", TerminalRole.Supply, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [In, Out];

    public bool Breaker { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<FuseStyle>? Style { get; init; }

    public Written<Amps>? Breaking { get; init; }

    /// <summary>Breakers only.</summary>
    public Written<BreakerReset>? Reset { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins =>
    [
        new TerminalJoin
        {
            Kind = Breaker ? ConnectionKind.Breaker : ConnectionKind.Fuse,
            First = In,
            Second = Out,
            ClosedIn = SystemStates.All,
            Rating = Rating,
            Style = Style,
            Breaking = Breaking,
            Reset = Reset,
        },
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

    public override Landing LandingAt(TerminalShape terminal) =>
        Style?.Value is FuseStyle.Strip or FuseStyle.ClassT ? Landing.UsualStud("M8 stud")
            : Breaker ? Landing.UsualStud("M6 stud")
            : Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = Breaker ? DeviceSymbol.Breaker : DeviceSymbol.Fuse,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.Box,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = Style?.Words ?? "",
        PlainWords = Kind,
    };

    public override GearListing Listing => new()
    {
        As = Breaker ? ListedAs.Device : ListedAs.Fuse,
        Facts = Breaker ? GearListing.Known(Rating?.Words, $"{Reset?.Words ?? "manual"} reset") : [],
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.Open;

    internal static ProtectiveDevice Read(Fields f, bool breaker) => new()
    {
        Name = f.Key,
        Breaker = breaker,
        Rating = f.Amount<Amps>("rating", "rated current"),
        Style = breaker ? null : f.Choice("style", "construction of the fuse", FuseStyles.Words, "the smallest that comes in that rating"),
        Breaking = f.Amount<Amps>("breaking", "the highest current it can break"),
        Reset = breaker ? f.Choice("reset", "how it is reset", BreakerResets.Words, "manual") : null,
    };
}

/// <summary>How a circuit breaker is closed again.</summary>
public enum BreakerReset
{
    Manual,
    Automatic,
}

/// <summary>The words of <see cref="BreakerReset"/>.</summary>
public static class BreakerResets
{
    public static ChoiceWords<BreakerReset> Words { get; } = new((BreakerReset.Manual, "manual"), (BreakerReset.Automatic, "automatic"));
}
