namespace WireSketch.Drawing.Layout.Model;

/// <summary>
/// A sheet's graph by number. A body is a device that takes a place in a column; a port is one of its terminals; a slot is
/// a row of a port, of which a port has several only where several of its wires carry their label there; a link is a wire
/// from its first terminal to one of its others.
/// </summary>
internal sealed class SheetModel
{
    public required SheetGraph Graph { get; init; }

    public required int[] BodyDevice { get; init; }
    public required int[] BodyZone { get; init; }
    public required DeviceShape[] BodyShape { get; init; }
    public required int[] BodyWidth { get; init; }

    /// <summary>True if the body may face the other way.</summary>
    public required bool[] BodyTurns { get; init; }

    /// <summary>True for slim devices and holders, which belong to a larger one.</summary>
    public required bool[] BodySmall { get; init; }

    /// <summary>First slot of each body; one entry more than bodies.</summary>
    public required int[] BodySlot { get; init; }

    /// <summary>Ports of a body by declared side: entry 4 × body + side.</summary>
    public required int[][] SidePorts { get; init; }

    public required int[] DeviceBody { get; init; }

    /// <summary>First port of each device of the graph; one entry more than devices.</summary>
    public required int[] DevicePort { get; init; }
    public required int[] PortDevice { get; init; }
    public required PortSide[] PortSide { get; init; }
    public required bool[] PortNumbered { get; init; }

    /// <summary>True if a port may be on the opposite side.</summary>
    public required bool[] PortFree { get; init; }
    public required int[] PortNameWidth { get; init; }

    /// <summary>First slot of each port, or -1 for the ports of satellites and for ports satellites hang from.</summary>
    public required int[] PortSlot { get; init; }
    public required int[] PortSlots { get; init; }

    public required int[] SlotBody { get; init; }
    public required int[] SlotPort { get; init; }

    /// <summary>Half the height a slot's row needs.</summary>
    public required int[] SlotHalf { get; init; }

    /// <summary>The wire whose label lies at the slot, or -1.</summary>
    public required int[] SlotLabel { get; init; }

    public required int[] LinkWire { get; init; }
    public required int[] LinkFrom { get; init; }
    public required int[] LinkTo { get; init; }

    /// <summary>First link of each wire; one entry more than wires.</summary>
    public required int[] WireLinks { get; init; }
    public required int[] WireNet { get; init; }
    /// <summary>
    /// What each wire shares its dummy nodes with: the wires of one terminal. Wires of one net that only meet farther on stay
    /// apart, so that a reader can tell from which terminal each of them comes.
    /// </summary>
    public required int[] WireHub { get; init; }
    public required int[] WireBundle { get; init; }

    /// <summary>The satellite that a wire leads to, or -1.</summary>
    public required int[] WireSatellite { get; init; }

    /// <summary>Wires that share dummy nodes with others and so may leave them.</summary>
    public required int[] SharingWires { get; init; }

    public required AttachedGround[] Satellites { get; init; }
    public required int[][] BodySatellites { get; init; }

    public int Bodies => BodyDevice.Length;
    public int Slots => SlotBody.Length;
    public int Links => LinkWire.Length;
    public int Zones => Graph.Zones.Length;
    public int Nets { get; init; }
    public int PortCount => PortSide.Length;

    public DeviceBox Device(int body) => Graph.Devices[BodyDevice[body]];

    /// <summary>True if the rows of a port part outside its box.</summary>
    public bool IsTied(int port) => PortSlots[port] > 1;

    public ReadOnlySpan<int> Ports(int body, PortSide side) => SidePorts[(4 * body) + (int)side];
}
