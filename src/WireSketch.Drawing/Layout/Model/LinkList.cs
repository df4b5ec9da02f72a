namespace WireSketch.Drawing.Layout.Model;

/// <summary>Gathers a link for each end of a wire beyond the first.</summary>
internal sealed class LinkList
{
    public LinkList(int[][] ends, int[] wireSatellite, int[] portSlot, int[] labelSlot, List<int> slotPort)
    {
        First = new int[ends.Length + 1];
        for (int w = 0; w < ends.Length; w++)
        {
            First[w] = Wire.Count;
            for (int k = 1; k < ends[w].Length && wireSatellite[w] < 0; k++)
            {
                Wire.Add(w);
                From.Add(SlotOf(ends[w][0]));
                To.Add(SlotOf(ends[w][k]));
            }

            // A wire goes to the row of its label where that is not the terminal's common row.
            int SlotOf(int port) => labelSlot[w] >= 0 && slotPort[labelSlot[w]] == port ? labelSlot[w] : portSlot[port];
        }

        First[^1] = Wire.Count;
    }

    public List<int> Wire { get; } = [];
    public List<int> From { get; } = [];
    public List<int> To { get; } = [];
    public int[] First { get; }
}
