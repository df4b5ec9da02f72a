using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>Moves each terminal of a side to its best place among the others; numbered terminals keep their order.</summary>
internal sealed class TerminalSifter(ColumnOrder order)
{
    // Sides with more terminals do without remembered changes.
    private const int Remembered = 24;

    private readonly int[] _known = new int[Remembered * Remembered];
    private readonly bool[] _turns = new bool[Remembered];
    private int[] _ports = [], _first = [];
    private int _body, _index;

    /// <summary>Sifts both sides of a body once; returns the crossings gained.</summary>
    public int Sift(int body)
    {
        (_body, _index) = (body, order.Key[order.Wiring.Model.BodySlot[body]] / ColumnOrder.Step);
        return SiftSide(2 * body) + SiftSide((2 * body) + 1);
    }

    private int SiftSide(int side)
    {
        _ports = order.SideOrder[side];
        if (_ports.Length < 2)
        {
            return 0;
        }

        _first = (int[])_ports.Clone();
        Array.Fill(_known, int.MinValue);
        for (int k = 0; k < Math.Min(_first.Length, Remembered); k++)
        {
            _turns[k] = Turns(_first[k]);
        }

        var model = order.Wiring.Model;
        int gain = 0;
        for (int i = 0; i < _first.Length; i++)
        {
            int port = _first[i], start = Array.IndexOf(_ports, port), k = start, best = 0, at = start, now = 0;
            while (k < _ports.Length - 1 && MayPass(model, port, _ports[k + 1]))
            {
                now += Swap(k++);
                if (now < best)
                {
                    (best, at) = (now, k);
                }
            }

            while (k > 0 && MayPass(model, port, _ports[k - 1]))
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
        int u = _ports[k], v = _ports[k + 1];
        int a = Array.IndexOf(_first, u), b = Array.IndexOf(_first, v);
        if (a >= Remembered || b >= Remembered || _turns[a] || _turns[b])
        {
            int before = Between(u, v);
            Exchange(k);
            return Between(u, v) - before;
        }

        int at = (a * Remembered) + b;
        if (_known[at] == int.MinValue)
        {
            int before = Between(u, v);
            Exchange(k);
            _known[at] = Between(u, v) - before;
            _known[(b * Remembered) + a] = -_known[at];
        }
        else
        {
            Exchange(k);
        }

        return _known[at];
    }

    private void Exchange(int k)
    {
        var model = order.Wiring.Model;
        int u = _ports[k], v = _ports[k + 1];
        (_ports[k], _ports[k + 1]) = (v, u);
        if (model.PortSlots[u] == 1 && model.PortSlots[v] == 1)
        {
            order.ExchangeSlots(model.PortSlot[u], model.PortSlot[v]);
            return;
        }

        order.SetInner(_body);
        order.SetKey(_body, _index);
    }

    private bool Turns(int port)
    {
        var w = order.Wiring;
        for (int i = 0; i < w.Model.PortSlots[port]; i++)
        {
            foreach (int e in w.At(w.Model.PortSlot[port] + i))
            {
                if (w.Piece[e].Shape != SegmentShape.Across)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private int Between(int p, int q)
    {
        var w = order.Wiring;
        int sum = 0;
        for (int i = 0; i < w.Model.PortSlots[p]; i++)
        {
            foreach (int e in w.At(w.Model.PortSlot[p] + i))
            {
                for (int j = 0; j < w.Model.PortSlots[q]; j++)
                {
                    foreach (int f in w.At(w.Model.PortSlot[q] + j))
                    {
                        sum += e == f ? 0 : Crossing.Of(w.Piece, order.Key, e, f);
                    }
                }
            }
        }

        return sum;
    }
}
