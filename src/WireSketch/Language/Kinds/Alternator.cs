using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>An alternator: a regulated source with a current limit.</summary>
public sealed record Alternator : Gear
{
    public override string Kind => "alternator";

    /// <summary>Its positive terminal.</summary>
    public static TerminalShape Positive { get; } = Node("+", TerminalRole.Supply, TerminalFlow.Out);

    /// <summary>Its negative terminal.</summary>
    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Positive, Negative];

    public Written<Amps>? Output { get; init; }

    public Written<Amps>? Idle { get; init; }

    public Written<Volts>? Regulated { get; init; }

    public override ImmutableArray<SupplySource> Sources =>
    [
        new AlternatorSource
        {
            Plus = Positive,
            Minus = Negative,
            LiveIn = SystemStates.EngineRuns,
            Output = Output,
            Idle = Idle,
            Regulated = Regulated,
        },
    ];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins =>
    [
        new TerminalJoin
        {
            Suffix = ".case",
            Kind = ConnectionKind.Chassis,
            First = Negative,
            Second = null,
            End = JoinEnd.Body,
            When = JoinCondition.FirstIsUnwired,
            ClosedIn = SystemStates.All,
        },
        new TerminalJoin
        {
            Suffix = ".lead",
            Kind = ConnectionKind.FactoryLead,
            First = Positive,
            Second = null,
            End = JoinEnd.StarterPositive,
            When = JoinCondition.FirstIsUnwired,
            ClosedIn = SystemStates.None,
        },
    ];

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

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Alternator,
        Family = DeviceFamily.Source,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = Output?.Words ?? "",
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = GearListing.Known(Output?.Words) };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static Alternator Read(Fields f) => new()
    {
        Name = f.Key,
        Output = f.Amount<Amps>("output", "output when hot, at speed", "job.vehicle.alternator"),
        Idle = f.Amount<Amps>("idle", "output with the engine idling", "half of its output (common practice)"),
        Regulated = f.Amount<Volts>("regulated", "the voltage it regulates to", "job.vehicle.running, or 14.2 V"),
    };
}
