using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>What it takes to get at a device.</summary>
public enum Reach
{
    /// <summary>A hand reaches it.</summary>
    Hand,

    /// <summary>It is behind a panel that comes off.</summary>
    Panel,

    /// <summary>Nothing reaches it once the vehicle is closed.</summary>
    None,
}

/// <summary>The words of <see cref="Reach"/>.</summary>
public static class Reaches
{
    public static ChoiceWords<Reach> Words { get; } = new((Reach.Hand, "hand"), (Reach.Panel, "panel"), (Reach.None, "none"));
}

/// <summary>A side of the vehicle.</summary>
public enum VehicleSide
{
    Left,
    Right,
    Middle,
}

/// <summary>The words of <see cref="VehicleSide"/>.</summary>
public static class VehicleSides
{
    public static ChoiceWords<VehicleSide> Words { get; } =
        new((VehicleSide.Left, "left"), (VehicleSide.Right, "right"), (VehicleSide.Middle, "middle"));
}

/// <summary>What along a path must not be touched.</summary>
public enum Hazard
{
    Airbag,
    SeatBelt,
    FuelLine,
    BrakeLine,
    HighVoltage,
    Exhaust,
    SeatRail,
    MovingPart,
}

/// <summary>The words of <see cref="Hazard"/>.</summary>
public static class Hazards
{
    public static ChoiceWords<Hazard> Words { get; } = new(
        (Hazard.Airbag, "airbag"),
        (Hazard.SeatBelt, "seat belt"),
        (Hazard.FuelLine, "fuel line"),
        (Hazard.BrakeLine, "brake line"),
        (Hazard.HighVoltage, "high voltage"),
        (Hazard.Exhaust, "exhaust"),
        (Hazard.SeatRail, "seat rail"),
        (Hazard.MovingPart, "moving part"));
}

/// <summary>The words of <see cref="ZoneKind"/>.</summary>
public static class ZoneKinds
{
    public static ChoiceWords<ZoneKind> Words { get; } = new(
        (ZoneKind.EngineBay, "engine bay"),
        (ZoneKind.Dash, "dash"),
        (ZoneKind.Cabin, "cabin"),
        (ZoneKind.LivingArea, "living area"),
        (ZoneKind.Cargo, "cargo"),
        (ZoneKind.Roof, "roof"),
        (ZoneKind.Outside, "outside"));
}

/// <summary>The words of <see cref="ZoneWall"/>.</summary>
public static class ZoneWalls
{
    public static ChoiceWords<ZoneWall> Words { get; } = new(
        (ZoneWall.None, "none"), (ZoneWall.Metal, "metal"), (ZoneWall.Firewall, "firewall"), (ZoneWall.Bulkhead, "bulkhead"));
}

/// <summary>The words of <see cref="Diagnostics.Severity"/>.</summary>
public static class Severities
{
    public static ChoiceWords<Diagnostics.Severity> Words { get; } = new(
        (Diagnostics.Severity.Error, "error"), (Diagnostics.Severity.Warning, "warning"), (Diagnostics.Severity.Advice, "advice"));
}
