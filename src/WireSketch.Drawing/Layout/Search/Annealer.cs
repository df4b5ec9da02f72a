using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P4Route;
using WireSketch.Drawing.Layout.P5Label;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>
/// Searches arrangements for the sheet that costs least, by simulated annealing (S. Kirkpatrick and others 1983): a move is
/// kept if the whole drawing costs less, or by chance if it costs little more, and ever less so as the search goes on.
/// </summary>
internal sealed class Annealer
{
    private const int Anneals = 3, HottestFrom = 2000, HottestFromPrevious = 600, Coldest = 50;

    private readonly SheetModel model;
    private readonly Evaluator evaluator;
    private readonly SeededRandom random = new(7);
    private Candidate best;

    private Annealer(SheetModel model, Evaluator evaluator, Candidate best)
    {
        this.model = model;
        this.evaluator = evaluator;
        this.best = best;
    }

    public static LabeledSheet Run(SheetModel model, LayoutOptions options)
    {
        var stability = options.Previous is { } previous && model.Bodies > 0 ? new StabilityCost(model, previous) : null;
        var page = new Page(options, model.Graph.Devices.Length);
        var evaluator = new Evaluator(page, new GroupingCost(model), new OrientationCost(model), stability);
        var starts = stability is null ? Starts.Of(model, evaluator) : [Starts.FromPrevious(model, evaluator, stability)];
        var annealer = new Annealer(model, evaluator, starts[0]);
        int tries = Tries(model, options.Effort);
        for (int round = 0; round < Anneals; round++)
        {
            var from = round < Anneals - 1 ? starts[Math.Min(round, starts.Count - 1)] : annealer.best;
            annealer.Anneal(from, tries / Anneals, stability is null ? HottestFrom : HottestFromPrevious);
        }

        if (tries > 0)
        {
            annealer.best = new Polisher(model, evaluator).Polish(annealer.best, tries);
        }

        var sheet = Spacer.Fill(annealer.best.Sheet, page);
        int wide = page.WidthFor(sheet.Height);
        return sheet.Routed.Clashes.Count == 0 && sheet.Width >= wide ? sheet : Labeler.Label(ClashRepair.Repair(sheet.Routed), wide);
    }

    /// <summary>Fewer as the work of judging one sheet grows, so that large sheets take no longer than they must.</summary>
    private static int Tries(SheetModel model, double effort)
    {
        const int Most = 6000, Budget = 20_000_000;
        long work = (long)model.Links * (model.Links + 20) * (model.Links + 400) / 400;
        return (int)(Math.Min(Most, Budget / Math.Max(1, work)) * Math.Clamp(effort, 0, 100));
    }

    private void Anneal(Candidate current, int tries, int hottest)
    {
        var moves = new Moves(model, random);
        for (int i = 0; i < tries; i++)
        {
            long left = tries - i;
            long heat = (hottest * left / tries * left / tries) + Coldest;
            var trial = moves.Try(current);
            if (trial is null)
            {
                continue;
            }

            long limit = current.Price + (heat * random.AcceptanceThreshold() / 1000);
            var next = evaluator.Judge(trial, limit, current, near: i % 4 != 0);
            if (next is not null && next.Price < limit)
            {
                current = next;
                if (next.Price < best.Price)
                {
                    best = next;
                }
            }
        }
    }
}
