using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A point on the vehicle's body or frame to which grounds are bolted.</summary>
public sealed record ChassisPoint : Gear
{
    public override string Kind => "chassis point";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("", TerminalRole.Ground)];

    public Written<MountingSurface>? Surface { get; init; }

    public Written<MountingBase>? On { get; init; }

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
    public static ChoiceWords<MountingSurface> Words { get; } = new((MountingSurface.BareMetal, "bare metal"), (MountingSurface.Painted, "painted"), (MountingSurface.Unknown, "unknown"));
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
