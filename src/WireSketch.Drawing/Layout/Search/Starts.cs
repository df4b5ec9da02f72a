using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Sheets to search from: few and many sub-columns in each zone, by rank.</summary>
internal static class Starts
{
    /// <summary>Bodies above which only a few numbers of sub-columns are tried, the same ones in proportion to each zone.</summary>
    private const int TryAllTo = 60;

    public static List<Candidate> Of(SheetModel model, Evaluator evaluator)
    {
        int[] rank = StartColumns.Ranks(model);
        bool[] turned = StartFacing.Of(model);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var starts = new List<Candidate>();
        foreach (int[] most in model.Bodies <= TryAllTo ? All(model) : Proportional(model))
        {
            int[] sub = StartColumns.ByRank(rank, model, most);
            if (!seen.Add(string.Join(',', sub)))
            {
                continue;
            }

            var choices = Choices.For(model, sub, turned);
            var order = Orderer.First(WireSegmenter.Cut(model, choices), 5);
            if (evaluator.Complete(choices, order, long.MaxValue / 2) is { } start)
            {
                starts.Add(start);
            }
        }

        starts.Sort((a, b) => a.Price != b.Price ? a.Price.CompareTo(b.Price) : starts.IndexOf(a).CompareTo(starts.IndexOf(b)));
        return starts;
    }

    /// <summary>The sheet that keeps to an earlier arrangement.</summary>
    public static Candidate FromPrevious(SheetModel model, Evaluator evaluator, StabilityCost stability)
    {
        var choices = Choices.For(model, stability.SubColumns(), stability.Facing(), stability.Opposite());
        return evaluator.Complete(
            choices,
            Orderer.FromPrevious(WireSegmenter.Cut(model, choices), stability.Positions(), 5),
            long.MaxValue / 2)!;
    }

    private static IEnumerable<int[]> All(SheetModel model)
    {
        int[] limit = new int[model.Zones], bodies = new int[model.Zones];
        foreach (int z in model.BodyZone)
        {
            bodies[z]++;
        }

        for (int z = 0; z < limit.Length; z++)
        {
            limit[z] = Math.Clamp(bodies[z], 1, z < 2 || model.Zones > 5 ? 2 : 3);
        }

        int[] most = new int[model.Zones];
        Array.Fill(most, 1);
        while (true)
        {
            yield return (int[])most.Clone();
            int z = 0;
            while (z < most.Length && most[z] == limit[z])
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

    private static IEnumerable<int[]> Proportional(SheetModel model)
    {
        int[] bodies = new int[model.Zones];
        foreach (int z in model.BodyZone)
        {
            bodies[z]++;
        }

        for (int deep = 8; deep <= 32; deep *= 2)
        {
            yield return Array.ConvertAll(bodies, n => Math.Clamp((n + deep - 1) / deep, 1, 6));
        }
    }
}
