using System.Collections.Immutable;

namespace WireSketch.Drawing.Layout;

/// <summary>A place on the sheet, in whole units, x to the right and y down.</summary>
internal readonly record struct GridPoint(int X, int Y);

/// <summary>A rectangle on the sheet, in whole units.</summary>
internal readonly record struct GridRect(int X, int Y, int Width, int Height)
{
    public int Right => X + Width;
    public int Bottom => Y + Height;
}

/// <summary>A sheet with everything in its place.</summary>
/// <param name="Size">Extent of the whole drawing, from the origin.</param>
/// <param name="Zones">One rectangle for each zone of the graph, in its order.</param>
/// <param name="Walls">The walls between zones.</param>
/// <param name="Devices">Devices in the order of the graph.</param>
/// <param name="Wires">Wires in the order of the graph.</param>
/// <param name="Arrangement">What to keep so that a later layout stays close to this one.</param>
internal sealed record SheetLayout(
    GridRect Size,
    ImmutableArray<PlacedZone> Zones,
    ImmutableArray<PlacedWall> Walls,
    ImmutableArray<PlacedDevice> Devices,
    ImmutableArray<RoutedWire> Wires,
    Arrangement Arrangement);

/// <summary>A zone's column.</summary>
internal sealed record PlacedZone(string Id, GridRect Box);

/// <summary>A wall and the points at which wires pass through it.</summary>
internal sealed record PlacedWall(GridRect Box, ImmutableArray<WallPass> Passes);

/// <summary>A wire's passage through a wall.</summary>
/// <param name="Wire">Id of the wire.</param>
/// <param name="Bundle">Its bundle, if any.</param>
/// <param name="At">Center of the passage.</param>
internal sealed record WallPass(string Wire, string? Bundle, GridPoint At);

/// <summary>A device in its place.</summary>
/// <param name="Id">The device's id.</param>
/// <param name="Box">Its outer box.</param>
/// <param name="Ports">Where its terminals are, in the order of the graph.</param>
internal sealed record PlacedDevice(string Id, GridRect Box, ImmutableArray<PlacedPort> Ports);

/// <summary>A terminal in its place, on the edge of its device's box.</summary>
/// <param name="Id">The terminal's full name.</param>
/// <param name="At">Where its wires land.</param>
/// <param name="Side">The side it came to be on: slim devices and holders may face the other way than their graph says, and free
/// terminals be opposite.</param>
internal sealed record PlacedPort(string Id, GridPoint At, PortSide Side);

/// <summary>A wire's polyline.</summary>
/// <param name="Id">The wire's id.</param>
/// <param name="Polylines">Polylines of horizontal and vertical stretches; one for each end beyond the first. A shared vertical stands in
/// each of them.</param>
/// <param name="Label">The box kept free for the label, on a stretch of the wire that no other wire shares; empty where the wire carries
/// none.</param>
/// <param name="Dots">Points at which wires of one net part.</param>
internal sealed record RoutedWire(
    string Id,
    ImmutableArray<ImmutableArray<GridPoint>> Polylines,
    GridRect Label,
    ImmutableArray<GridPoint> Dots);

/// <summary>
/// The arrangement behind a layout: sub-column, order and row of every device. Part of the input of a later layout that must move little.
/// </summary>
/// <param name="Devices">For each device: its zone's id, its sub-column and its rank within it.</param>
public sealed record Arrangement(ImmutableArray<ArrangedDevice> Devices);

/// <summary>A device's place in an arrangement.</summary>
/// <param name="Id">The device's id.</param>
/// <param name="Zone">Its zone's id.</param>
/// <param name="SubColumn">Its sub-column within the zone, from 0.</param>
/// <param name="Rank">Its place in the sub-column from the top, from 0; a chassis point that hangs below its partner has that
/// one's.</param>
/// <param name="Turned">True if it faces the other way than its graph says.</param>
/// <param name="Opposite">Its terminals that are opposite to where they would be by that.</param>
public sealed record ArrangedDevice(
    string Id,
    string Zone,
    int SubColumn,
    int Rank,
    bool Turned = false,
    ImmutableArray<string> Opposite = default);
