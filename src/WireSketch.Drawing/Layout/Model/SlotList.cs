namespace WireSketch.Drawing.Layout.Model;

/// <summary>
/// Gathers the rows of the terminals. A terminal with several wires has a common row, and one more for each wire that
/// carries its label there, since a label must lie on a stretch that is its wire's alone.
/// </summary>
internal sealed class SlotList
{
    public SlotList(int ports)
    {
        PortSlot = new int[ports];
        PortSlots = new int[ports];
        Array.Fill(PortSlot, -1);
    }

    public List<int> Body { get; } = [];
    public List<int> PortOf { get; } = [];
    public List<int> Half { get; } = [];
    public List<int> Label { get; } = [];
    public int[] PortSlot { get; }
    public int[] PortSlots { get; }
    public int Count => Body.Count;

    public void Add(int body, int port, List<int> labels, bool shared, SheetGraph graph, int[] labelSlot)
    {
        PortSlot[port] = Count;
        if (shared || labels.Count == 0)
        {
            Append(body, port, -1, Measure.HalfRow);
        }

        foreach (int wire in labels)
        {
            labelSlot[wire] = Count;
            Append(body, port, wire, Math.Max(Measure.HalfRow, Measure.HalfLabel(graph.Wires[wire].LabelHeight)));
        }

        PortSlots[port] = Count - PortSlot[port];
    }

    private void Append(int body, int port, int label, int half)
    {
        Body.Add(body);
        PortOf.Add(port);
        Label.Add(label);
        Half.Add(half);
    }
}
