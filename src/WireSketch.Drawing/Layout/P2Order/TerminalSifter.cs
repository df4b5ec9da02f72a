using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>Moves each terminal of a side to its best place among the others; numbered terminals keep their order.</summary>
internal sealed class TerminalSifter(ColumnOrder order)
{
    /// <summary>Sides with more terminals do without remembered changes.</summary>
    private const int Remembered = 24;

    private readonly int[] known = new int[Remembered * Remembered];
    private readonly bool[] turns = new bool[Remembered];
    private int[] ports = [], first = [];
    private int body, index;

    /// <summary>Sifts both sides of a body once; returns the crossings gained.</summary>
    public int Sift(int body)
    {
        (this.body, index) = (body, order.Key[order.Graph.Model.BodySlot[body]] / ColumnOrder.Step);
        return SiftSide(2 * body) + SiftSide((2 * body) + 1);
    }

    private int SiftSide(int side)
    {
        ports = order.SideOrder[side];
        if (ports.Length < 2)
        {
            return 0;
        }

        first = (int[])ports.Clone();
        Array.Fill(known, int.MinValue);
        for (int k = 0; k < Math.Min(first.Length, Remembered); k++)
        {
            turns[k] = Turns(first[k]);
        }

        var model = order.Graph.Model;
        int gain = 0;
        for (int i = 0; i < first.Length; i++)
        {
            int port = first[i], start = Array.IndexOf(ports, port), k = start, best = 0, at = start, now = 0;
            while (k < ports.Length - 1 && MayPass(model, port, ports[k + 1]))
            {
                now += Swap(k++);
                if (now < best)
                {
                    (best, at) = (now, k);
                }
            }

            while (k > 0 && MayPass(model, port, ports[k - 1]))
            {
                now += Swap(--k);
                if (now < best || (now == best && Math.Abs(k - start) < Math.Abs(at - start)))
                {
                    (best, at) = (now, k);
                }
            }

            while (k < at)
            {
                Exchange(k++);
            }

            gain -= best;
        }

        return gain;
    }

    private static bool MayPass(SheetModel model, int a, int b) => !(model.PortNumbered[a] && model.PortNumbered[b]);

    private int Swap(int k)
    {
        int u = ports[k], v = ports[k + 1];
        int a = Array.IndexOf(first, u), b = Array.IndexOf(first, v);
        if (a >= Remembered || b >= Remembered || turns[a] || turns[b])
        {
            int before = Between(u, v);
            Exchange(k);
            return Between(u, v) - before;
        }

        int at = (a * Remembered) + b;
        if (known[at] == int.MinValue)
        {
            int before = Between(u, v);
            Exchange(k);
            known[at] = Between(u, v) - before;
            known[(b * Remembered) + a] = -known[at];
        }
        else
        {
            Exchange(k);
        }

        return known[at];
    }

    private void Exchange(int k)
    {
        var model = order.Graph.Model;
        int u = ports[k], v = ports[k + 1];
        (ports[k], ports[k + 1]) = (v, u);
        if (model.PortSlots[u] == 1 && model.PortSlots[v] == 1)
        {
            order.ExchangeSlots(model.PortSlot[u], model.PortSlot[v]);
            return;
        }

        order.SetInner(body);
        order.SetKey(body, index);
    }

    private bool Turns(int port)
    {
        var w = order.Graph;
        for (int i = 0; i < w.Model.PortSlots[port]; i++)
        {
            foreach (int e in w.At(w.Model.PortSlot[port] + i))
            {
                if (w.Segment[e].Shape != SegmentShape.Across)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private int Between(int p, int q)
    {
        var w = order.Graph;
        int sum = 0;
        for (int i = 0; i < w.Model.PortSlots[p]; i++)
        {
            foreach (int e in w.At(w.Model.PortSlot[p] + i))
            {
                for (int j = 0; j < w.Model.PortSlots[q]; j++)
                {
                    foreach (int f in w.At(w.Model.PortSlot[q] + j))
                    {
                        sum += e == f ? 0 : Crossing.Of(w.Segment, order.Key, e, f);
                    }
                }
            }
        }

        return sum;
    }
}
