using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A point on the vehicle's body or frame to which grounds are bolted.</summary>
public sealed record ChassisPoint : Gear
{
    public override string Kind => "chassis point";

    public static TerminalShape Bolt { get; } = Node("", TerminalRole.Ground);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Bolt];

    public Written<MountingSurface>? Surface { get; init; }

    public Written<MountingBase>? On { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins =>
        [new TerminalJoin { Kind = ConnectionKind.Chassis, First = Bolt, Second = null, End = JoinEnd.Body, ClosedIn = SystemStates.All }];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => new(LandingForm.BodyBolt, "M8 bolt", false);

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.Top;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Chassis,
        Family = DeviceFamily.JointOrSwitch,
        Form = DrawnForm.GroundPoint,
        IsHub = false,
        HasFreeSides = false,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join(Surface?.Words, On is { Value: not MountingBase.Body } on ? on.Words : ""),
        PlainWords = "ground point",
    };

    public override GearListing Listing => new() { As = ListedAs.PlaceOnVehicle, Facts = [] };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static ChassisPoint Read(Fields f) => new()
    {
        Name = f.Key,
        Surface = f.Choice("surface", "what the lug sits on", MountingSurfaces.Words, "unknown"),
        On = f.Choice("on", "what the point is part of", MountingBases.Words, "body"),
    };
}

/// <summary>What a ground lug sits on.</summary>
public enum MountingSurface
{
    BareMetal,
    Painted,
    Unknown,
}

/// <summary>The words of <see cref="MountingSurface"/>.</summary>
public static class MountingSurfaces
{
    public static ChoiceWords<MountingSurface> Words { get; } = new(
        (MountingSurface.BareMetal, "bare metal"),
        (MountingSurface.Painted, "painted"),
        (MountingSurface.Unknown, "unknown"));
}

/// <summary>What a ground point is part of.</summary>
public enum MountingBase
{
    Body,
    Frame,
    SeatRail,
    Bracket,
    BoltThroughCarpet,
    SeatBolt,
    BeltAnchor,
    AirbagPart,
    FuelPart,
    BrakePart,
}

/// <summary>The words of <see cref="MountingBase"/>.</summary>
public static class MountingBases
{
    public static ChoiceWords<MountingBase> Words { get; } = new(
        (MountingBase.Body, "body"),
        (MountingBase.Frame, "frame"),
        (MountingBase.SeatRail, "seat rail"),
        (MountingBase.Bracket, "bracket"),
        (MountingBase.BoltThroughCarpet, "bolt through carpet"),
        (MountingBase.SeatBolt, "seat bolt"),
        (MountingBase.BeltAnchor, "belt anchor"),
        (MountingBase.AirbagPart, "airbag part"),
        (MountingBase.FuelPart, "fuel part"),
        (MountingBase.BrakePart, "brake part"));
}
