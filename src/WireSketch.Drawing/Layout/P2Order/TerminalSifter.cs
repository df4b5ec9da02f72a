using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>Moves each terminal of a side to its best place among the others; numbered terminals keep their order.</summary>
internal static class TerminalSifter
{
    /// <summary>Sifts both sides of a body once; returns the crossings gained.</summary>
    public static int Sift(ColumnOrder order, int body)
    {
        var model = order.Wiring.Model;
        int index = order.Key[model.BodySlot[body]] >> 12, gain = 0;
        for (int side = 0; side < 2; side++)
        {
            int[] ports = order.SideOrder[(2 * body) + side];
            if (ports.Length < 2)
            {
                continue;
            }

            foreach (int port in (int[])ports.Clone())
            {
                int start = Array.IndexOf(ports, port), k = start, best = 0, at = start, now = 0;
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

            int Swap(int k)
            {
                int u = ports[k], v = ports[k + 1];
                int before = Between(order, u, v);
                Exchange(k);
                return Between(order, u, v) - before;
            }

            void Exchange(int k)
            {
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
        }

        return gain;
    }

    public static bool MayPass(SheetModel model, int a, int b) => !(model.PortNumbered[a] && model.PortNumbered[b]);

    private static int Between(ColumnOrder order, int p, int q)
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
                        if (e != f)
                        {
                            sum += Crossing.Of(w.Piece, order.Key, e, f);
                        }
                    }
                }
            }
        }

        return sum;
    }
}
