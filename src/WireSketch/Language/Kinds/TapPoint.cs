using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A point on the vehicle's own wiring where a connection is made.</summary>
public sealed record TapPoint : Gear
{
    public override string Kind => "tap point";

    /// <summary>The wire, its pair of wires, or a pair for each channel.</summary>
    public TerminalShape Wire
    {
        get
        {
            if (Role is not (TerminalRole.Speaker or TerminalRole.Line))
            {
                return Node("", Role, Flow);
            }

            return Channels is { Value: > 0 and var n }
                ? Group("", Role, Flow, []) with { Members = [.. ChannelNames(n).Select(m => Pair(m, Role, Flow))] }
                : Pair("", Role, Flow);
        }
    }

    public override ImmutableArray<TerminalShape> Terminals => [Wire];

    private TerminalRole Role => Carries?.Value switch
    {
        TapContent.Constant or TapContent.Accessory => TerminalRole.Supply,
        TapContent.Ground => TerminalRole.Ground,
        TapContent.Speaker => TerminalRole.Speaker,
        TapContent.Line => TerminalRole.Line,
        TapContent.Control => TerminalRole.Control,
        _ => TerminalRole.Any,
    };

    private TerminalFlow Flow => Role == TerminalRole.Ground ? TerminalFlow.Both : TerminalFlow.Out;

    public Written<TapContent>? Carries { get; init; }

    public Written<int>? Channels { get; init; }

    public Written<Amps>? Limit { get; init; }

    public Written<Volts>? Maximum { get; init; }

    public Written<string>? Color { get; init; }

    public Written<string>? Connector { get; init; }

    public Written<string>? Cavity { get; init; }

    public override ImmutableArray<SupplySource> Sources =>
        Carries?.Value is TapContent.Constant or TapContent.Accessory or TapContent.Control
        ?
        [
            new VehicleCircuit
            {
                Plus = Wire, Minus = null, Limit = Limit, IsSignalOnly = Carries.Value.Value == TapContent.Control, IsStartCircuit = false,
                LiveIn = Carries.Value.Value == TapContent.Constant ? SystemStates.All : SystemStates.Awake,
            },
        ]
        : [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins =>
        Carries?.Value == TapContent.Ground
        ? [new TerminalJoin { Kind = ConnectionKind.Chassis, First = Wire, Second = null, End = JoinEnd.Body, ClosedIn = SystemStates.All }]
        : [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs =>
        Role is TerminalRole.Speaker or TerminalRole.Line
        ?
        [
            .. (Wire.Form == TerminalForm.Group ? Wire.Members : [Wire]).Select(pair => new SignalOutput
            {
                Terminal = pair,
                Group = "",
                DeclaredAt = Name.At,
                MayBeFirst = true,
                Level = Role == TerminalRole.Speaker ? SignalLevel.Speaker : SignalLevel.Line,
                CarriesOn = [],
                Maximum = Maximum,
                HasDcOffset = Role == TerminalRole.Speaker,
            }),
        ]
        : [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Splice;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.Right;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Tap,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.EndPoint,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join(Carries is { } c ? "vehicle " + c.Words : "vehicle wire", Color?.Value),
        PlainWords = "vehicle wiring",
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.PlaceOnVehicle,
        Facts = [],
        Connection = new() { Color = Color, Connector = Connector, Cavity = Cavity, Carries = Carries?.Words, Limit = Limit },
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static TapPoint Read(Fields f) => new()
    {
        Name = f.Key,
        Carries = f.Choice("carries", "what the vehicle's wire carries", TapContents.Words),
        Channels = f.Count("channels", "number of channels, for speaker or line", "1"),
        Limit = f.Amount<Amps>("limit", "the most that may be taken from it"),
        Maximum = f.Amount<Volts>("maximum", "highest signal voltage there, for speaker or line"),
        Color = f.Text("color", "color of the vehicle's wire"),
        Connector = f.Text("connector", "the vehicle's connector"),
        Cavity = f.Text("cavity", "cavity in that connector"),
    };
}

/// <summary>What a wire of the vehicle carries.</summary>
public enum TapContent
{
    Constant,
    Accessory,
    Ground,
    Speaker,
    Line,
    Control,
}

/// <summary>The words of <see cref="TapContent"/>.</summary>
public static class TapContents
{
    public static ChoiceWords<TapContent> Words { get; } = new(
        (TapContent.Constant, "constant"),
        (TapContent.Accessory, "accessory"),
        (TapContent.Ground, "ground"),
        (TapContent.Speaker, "speaker"),
        (TapContent.Line, "line"),
        (TapContent.Control, "control"));
}
