using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;
using WireSketch.Drawing.Layout.P4Route;
using WireSketch.Drawing.Layout.P5Label;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Searches arrangements for the sheet that costs least.</summary>
internal static class Annealer
{
    public static LabelledSheet Run(SheetModel model, LayoutOptions options)
    {
        var page = new Page(options, model.Graph.Devices.Length);
        var evaluator = new Evaluator(page);
        int[] rank = StartColumns.Ranks(model);
        Candidate? best = null;
        foreach (int[] most in Starts(model))
        {
            var choices = Choices.For(model, StartColumns.ByRank(rank, model, most));
            var order = Orderer.First(WireCutter.Cut(model, choices), 5);
            var candidate = evaluator.Complete(choices, order, long.MaxValue / 2);
            if (candidate is not null && (best is null || candidate.Price < best.Price))
            {
                best = candidate;
            }
        }

        var sheet = best!.Sheet;
        return sheet.Routed.Clashes.Count == 0 ? sheet : Labeller.Label(ClashRepair.Repair(sheet.Routed), 0);
    }

    private static IEnumerable<int[]> Starts(SheetModel model)
    {
        int[] most = new int[model.Zones];
        Array.Fill(most, 1);
        while (true)
        {
            yield return (int[])most.Clone();
            int z = 0;
            while (z < most.Length && most[z] == (z < 2 ? 2 : 3))
            {
                most[z++] = 1;
            }

            if (z == most.Length)
            {
                yield break;
            }

            most[z]++;
        }
    }
}
