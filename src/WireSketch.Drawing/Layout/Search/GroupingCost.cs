using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>
/// Keeps together what belongs together: devices of one group, and the small devices that one larger device feeds, cost a
/// little for each sub-column of a zone that they use beyond the first.
/// </summary>
internal sealed class GroupingCost
{
    private const int Apart = 300;

    private readonly int[][] groups;

    public GroupingCost(SheetModel model)
    {
        int[] host = new int[model.Bodies];
        Array.Fill(host, -1);
        for (int l = 0; l < model.Links; l++)
        {
            int a = model.SlotBody[model.LinkFrom[l]], b = model.SlotBody[model.LinkTo[l]];
            host[b] = model.BodySmall[b] && !model.BodySmall[a] && host[b] < 0 ? a : host[b];
        }

        var members = new Dictionary<(string?, int, int), List<int>>();
        for (int b = 0; b < model.Bodies; b++)
        {
            string? group = model.Device(b).Group;
            if (group is null && host[b] < 0)
            {
                continue;
            }

            // A named group's small devices keep together; its larger ones stand where the flow wants them.
            if (model.BodySmall[b])
            {
                var key = (group, group is null ? host[b] : -1, model.BodyZone[b]);
                if (!members.TryGetValue(key, out var list))
                {
                    members.Add(key, list = []);
                }

                list.Add(b);
            }
        }

        groups = [.. members.Values.Where(m => m.Count > 1).Select(m => m.ToArray())];
    }

    public long Price(ColumnPlan columns)
    {
        long price = 0;
        foreach (int[] grouping in groups)
        {
            for (int i = 1; i < grouping.Length; i++)
            {
                bool known = false;
                for (int j = 0; j < i && !known; j++)
                {
                    known = columns.Of[grouping[i]] == columns.Of[grouping[j]];
                }

                price += known ? 0 : Apart;
            }
        }

        return price;
    }
}
