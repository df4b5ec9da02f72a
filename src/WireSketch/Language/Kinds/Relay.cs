using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A relay with standard terminal numbers (DIN 72552).</summary>
public sealed record Relay : Gear
{
    public override string Kind => "relay";

    /// <summary>30: where the supply comes in.</summary>
    public static TerminalShape Common { get; } = Node("30", TerminalRole.Supply, TerminalFlow.In);

    /// <summary>87: joined to 30 while the coil is pulled in.</summary>
    public static TerminalShape NormallyOpen { get; } = Node("87", TerminalRole.Supply, TerminalFlow.Out);

    /// <summary>87a: joined to 30 while the coil has fallen off.</summary>
    public static TerminalShape NormallyClosed { get; } = Node("87a", TerminalRole.Supply, TerminalFlow.Out);

    /// <summary>85: the end of the coil that is grounded.</summary>
    public static TerminalShape CoilMinus { get; } = Node("85", TerminalRole.Ground);

    /// <summary>86: the end of the coil that is driven.</summary>
    public static TerminalShape CoilPlus { get; } = Node("86", TerminalRole.Control, TerminalFlow.In);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Common, NormallyOpen, NormallyClosed, CoilMinus, CoilPlus];

    public Written<string>? Coil { get; init; }

    public Written<Amps>? CoilCurrent { get; init; }

    public Written<Ohms>? CoilResistance { get; init; }

    public Written<Amps>? Contact { get; init; }

    public bool Diode { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs =>
    [
        new()
        {
            Plus = CoilPlus, Minus = CoilMinus, IsOptional = true, IsCritical = false, OwnFuse = null, Fits = null,
            Takes = new CoilDraw { Coil = Coil, Current = CoilCurrent, Resistance = CoilResistance, HasDiode = Diode },
        },
    ];

    public override ImmutableArray<InternalJoin> Joins =>
    [
        new TerminalJoin
        {
            Kind = ConnectionKind.Switch,
            First = Common,
            Second = NormallyOpen,
            ClosedIn = SystemStates.Awake,
            Rating = Contact,
            Drive = new(CoilPlus, CoilMinus, ClosesPulledIn: true),
        },
        new TerminalJoin
        {
            Suffix = ".87a",
            Kind = ConnectionKind.Switch,
            First = Common,
            Second = NormallyClosed,
            ClosedIn = [SystemState.Standby],
            Rating = Contact,
            Drive = new(CoilPlus, CoilMinus, ClosesPulledIn: false),
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

    public override Landing LandingAt(TerminalShape terminal) => Landing.Blade;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Relay,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.Box,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join("relay", Contact?.Words),
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = GearListing.Known(Contact?.Words) };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.Covered;

    internal static Relay Read(Fields f)
    {
        var coil = f.Text("coil", "coil current or resistance", "0.15 A (common practice)");
        Written<Amps>? amps = null;
        Written<Ohms>? ohms = null;
        if (coil is { } words)
        {
            if (Quantity.TryRead<Amps>(words.Value, out var a, out _))
            {
                amps = new(a, words.Words, words.At);
            }
            else if (Quantity.TryRead<Ohms>(words.Value, out var o, out _))
            {
                ohms = new(o, words.Words, words.At);
            }
            else
            {
                f.Report(new(
                    "spec/value",
                    Diagnostics.Severity.Error,
                    $"\"{words.Value}\" is neither a current nor a resistance: a relay's coil is written as 0.15 A or 85 ohm",
                    words.At));
            }
        }

        return new()
        {
            Name = f.Key,
            Coil = coil,
            CoilCurrent = amps,
            CoilResistance = ohms,
            Contact = f.Amount<Amps>("contact", "what its contact carries"),
            Diode = f.Flag("diode", "has a diode across its coil, so 86 must be positive", "false")?.Value ?? false,
        };
    }
}
