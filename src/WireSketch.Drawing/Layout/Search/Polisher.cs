using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Tries every single change of a sheet once and keeps what truly improves it.</summary>
internal sealed class Polisher(SheetModel model, Evaluator evaluator)
{
    private readonly int[][] facing = Moves.FreePartners(model);
    private int tries;

    public Candidate Polish(Candidate best, int tries)
    {
        this.tries = tries;
        Candidate before;
        do
        {
            before = best;
            best = Round(best);
        }
        while (best != before);
        return best;
    }

    private Candidate Round(Candidate best)
    {
        for (int p = 0; p < model.PortSide.Length; p++)
        {
            if (model.PortFree[p] && model.PortSlot[p] >= 0)
            {
                Try(ref best, b => Moves.Rewire(b, model, b.Order.Positions(), opposite: p));
            }

            if (model.PortSlot[p] >= 0 && model.PortSide[p] is PortSide.Top or PortSide.Bottom)
            {
                Try(ref best, b => Moves.Rewire(b, model, b.Order.Positions(), leaves: Moves.Turned(b, p)));
            }
        }

        foreach (int w in model.SharingWires)
        {
            Try(ref best, b => Moves.Rewire(b, model, b.Order.Positions(), alone: Moves.Toggled(b.Choices.Alone, w)));
        }

        for (int body = 0; body < model.Bodies; body++)
        {
            if (model.BodyTurns[body])
            {
                Try(ref best, b => Moves.Rewire(b, model, b.Order.Positions(), turned: Moves.Toggled(b.Choices.Turned, body)));
                foreach (int p in facing[body])
                {
                    Try(
                        ref best,
                        b => Moves.Rewire(b, model, b.Order.Positions(), turned: Moves.Toggled(b.Choices.Turned, body), opposite: p));
                }
            }

            for (int way = -1; way <= 1; way += 2)
            {
                Try(
                    ref best,
                    b => SubColumns.Move(model, b.Choices.Sub, [body], body, way, false) is var sub && ReferenceEquals(sub, b.Choices.Sub)
                        ? null : Moves.Rewire(b, model, b.Order.Positions(), sub: sub));
            }
        }

        for (int c = 0; c < best.Order.Items.Length; c++)
        {
            for (int k = 0; c < best.Order.Items.Length && k < best.Order.Items[c].Length; k++)
            {
                for (int to = 0; to <= ColumnOrder.Whole; to += ColumnOrder.Whole)
                {
                    Try(ref best, b => To(b, c, k, to));
                }
            }
        }

        return best;
    }

    private static LayoutTrial? To(Candidate best, int column, int index, int position)
    {
        if (column >= best.Order.Items.Length || index >= best.Order.Items[column].Length)
        {
            return null;
        }

        int[] at = best.Order.Positions();
        at[best.Order.Items[column][index]] = position;
        bool[] changed = new bool[best.Order.Items.Length];
        changed[column] = true;
        return new LayoutTrial(best.Choices, best.Order.Resorted(column, at), changed);
    }

    private void Try(ref Candidate best, Func<Candidate, LayoutTrial?> change)
    {
        for (int near = 1; near >= 0; near--)
        {
            if (tries-- > 0
                && change(best) is { } trial
                && evaluator.Judge(trial, best.Price, best, near == 1) is { } next
                && next.Price < best.Price)
            {
                best = next;
                return;
            }
        }
    }
}
