using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Makes a neighbor of an arrangement by one change of a kind drawn by lot.</summary>
internal sealed class Moves
{
    private readonly SheetModel model;
    private readonly SeededRandom random;
    private readonly int[][] partners, facing;
    private readonly int[] turning, edgePorts, freePorts;

    public Moves(SheetModel model, SeededRandom chance)
    {
        this.model = model;
        random = chance;
        var partners = new List<int>[model.Bodies];
        for (int l = 0; l < model.Links; l++)
        {
            int a = model.SlotBody[model.LinkFrom[l]], b = model.SlotBody[model.LinkTo[l]];
            (partners[a] ??= []).Add(b);
            (partners[b] ??= []).Add(a);
        }

        this.partners = Array.ConvertAll(partners, p => p is null ? [] : p.Distinct().ToArray());
        facing = FreePartners(model);
        turning = [.. Enumerable.Range(0, model.Bodies).Where(b => model.BodyTurns[b])];
        freePorts = [.. Enumerable.Range(0, model.PortCount).Where(p => model.PortFree[p] && model.PortSlot[p] >= 0)];
        edgePorts = [.. Enumerable.Range(0, model.PortSide.Length).Where(
            p => model.PortSlot[p] >= 0 && model.PortSide[p] is PortSide.Top or PortSide.Bottom)];
    }

    /// <summary>A neighbor, or null if the lot fell on something that cannot be done.</summary>
    public LayoutTrial? Try(Candidate current)
    {
        if (model.Bodies == 0)
        {
            return null;
        }

        int kind = random.Next(100);
        return kind < 36 ? MoveColumn(current)
            : kind < 72 ? Perturb(current)
            : kind < 79 ? Shuffle(current)
            : kind < 86 ? Turn(current)
            : kind < 91 ? Swap(current)
            : kind < 96 ? LeaveNet(current)
            : TurnEdge(current);
    }

    private static Choices Fresh(
        Candidate current, SheetModel model, int[]? sub = null, bool[]? turned = null, bool[]? alone = null, Leaving[]? leaves = null,
        int opposite = -1) => new()
        {
            Sub = sub ?? current.Choices.Sub,
            SideOrder = opposite < 0 ? current.Order.SideOrder : Across(model, current.Order.SideOrder, opposite),
            Opposite = opposite < 0 ? current.Choices.Opposite : Toggled(current.Choices.Opposite, opposite),
            Leaves = leaves ?? current.Choices.Leaves,
            Turned = turned ?? current.Choices.Turned,
            Alone = alone ?? current.Choices.Alone,
        };

    /// <summary>New choices with the order carried over.</summary>
    public static LayoutTrial Rewire(
        Candidate current, SheetModel model, int[] positions, int[]? sub = null, bool[]? turned = null, bool[]? alone = null,
        Leaving[]? leaves = null, int opposite = -1)
    {
        var choices = Fresh(current, model, sub, turned, alone, leaves, opposite);
        var order = Orderer.Carry(WireSegmenter.Cut(model, choices), current.Order, positions);
        return new LayoutTrial(choices, order, Changes.Between(current.Order, order));
    }

    private LayoutTrial? MoveColumn(Candidate current)
    {
        int body = random.Next(model.Bodies), zone = model.BodyZone[body];
        int[] sub = current.Choices.Sub;
        var movers = new List<int> { body };
        if (random.Is(40))
        {
            bool small = random.Is(50);
            foreach (int b in partners[body])
            {
                bool isSmall = model.BodySmall[b] && !model.BodySmall[body];
                if (b != body && model.BodyZone[b] == zone && (small ? isSmall : sub[b] == sub[body]))
                {
                    movers.Add(b);
                }
            }
        }

        int[] moved = SubColumns.Move(model, sub, movers, body, random.Is(50) ? 1 : -1, random.Is(25));
        if (ReferenceEquals(moved, sub))
        {
            return null;
        }

        int[] at = current.Order.Positions();
        if (random.Is(30))
        {
            foreach (int b in movers)
            {
                at[b] = random.Next(ColumnOrder.Whole);
            }
        }

        return Rewire(current, model, at, sub: moved);
    }

    private LayoutTrial? Perturb(Candidate current)
    {
        int c = random.Next(current.Order.Items.Length);
        int[] items = current.Order.Items[c];
        if (items.Length < 2)
        {
            return null;
        }

        int[] at = current.Order.Positions();
        int kind = random.Next(4);
        if (kind < 3)
        {
            at[items[random.Next(items.Length)]] = random.Next(ColumnOrder.Whole);
            if (kind == 2)
            {
                at[items[random.Next(items.Length)]] = random.Next(ColumnOrder.Whole);
            }
        }
        else
        {
            int a = random.Next(items.Length), b = random.Next(items.Length);
            (a, b) = (Math.Min(a, b), Math.Max(a, b));
            int[] old = (int[])at.Clone();
            for (int k = a; k <= b; k++)
            {
                at[items[k]] = old[items[a + b - k]];
            }
        }

        var order = current.Order.Resorted(c, at);
        bool[] changed = new bool[current.Order.Items.Length];
        changed[c] = true;
        return new LayoutTrial(current.Choices, order, changed);
    }

    private LayoutTrial? Shuffle(Candidate current)
    {
        int body = random.Next(model.Bodies), side = (2 * body) + random.Next(2);
        int[] ports = current.Order.SideOrder[side];
        if (ports.Length < 2)
        {
            return null;
        }

        ports = (int[])ports.Clone();
        if (random.Is(60))
        {
            for (int k = ports.Length - 1; k > 0; k--)
            {
                int j = random.Next(k + 1);
                (ports[k], ports[j]) = (ports[j], ports[k]);
            }
        }
        else
        {
            Array.Reverse(ports);
        }

        KeepNumbers(ports, current.Order.SideOrder[side]);
        var order = current.Order.Copy();
        ports.CopyTo(order.SideOrder[side], 0);
        order.SetInner(body);
        order.SetKeys();
        bool[] changed = new bool[order.Items.Length];
        changed[order.Graph.Columns.Of[body]] = true;
        return new LayoutTrial(current.Choices, order, changed);
    }

    /// <summary>Numbered terminals take the places drawn for them in their own order.</summary>
    private void KeepNumbers(int[] ports, int[] before)
    {
        int next = 0;
        for (int k = 0; k < ports.Length; k++)
        {
            if (model.PortNumbered[ports[k]])
            {
                while (!model.PortNumbered[before[next]])
                {
                    next++;
                }

                ports[k] = before[next++];
            }
        }
    }

    private LayoutTrial? Turn(Candidate current)
    {
        if (turning.Length == 0)
        {
            return null;
        }

        bool[] turned = (bool[])current.Choices.Turned.Clone();
        int body = turning[random.Next(turning.Length)];
        int[] facing = this.facing[body];
        turned[body] ^= true;
        return Rewire(
            current,
            model,
            current.Order.Positions(),
            turned: turned,
            opposite: facing.Length > 0 && random.Is(40) ? facing[random.Next(facing.Length)] : -1);
    }

    /// <summary>
    /// For each small body that may turn, the free terminals it is joined to: a fuse and the battery beside it face one way.
    /// </summary>
    public static int[][] FreePartners(SheetModel model)
    {
        var found = new List<int>[model.Bodies];
        for (int l = 0; l < model.Links; l++)
        {
            Note(model.LinkFrom[l], model.LinkTo[l]);
            Note(model.LinkTo[l], model.LinkFrom[l]);
        }

        return Array.ConvertAll(found, f => f is null ? [] : f.Distinct().ToArray());

        void Note(int near, int far)
        {
            if (model.BodySmall[model.SlotBody[near]] && model.PortFree[model.SlotPort[far]])
            {
                (found[model.SlotBody[near]] ??= []).Add(model.SlotPort[far]);
            }
        }
    }

    private LayoutTrial? Swap(Candidate current) =>
        freePorts.Length == 0
            ? null
            : Rewire(current, model, current.Order.Positions(), opposite: freePorts[random.Next(freePorts.Length)]);

    /// <summary>A port goes to the end of the other side; sifting finds its place.</summary>
    private static int[][] Across(SheetModel model, int[][] sides, int port)
    {
        int left = 2 * model.SlotBody[model.PortSlot[port]], from = Array.IndexOf(sides[left], port) >= 0 ? left : left + 1, to = from ^ 1;
        int[][] moved = (int[][])sides.Clone();
        moved[from] = [.. sides[from].Where(p => p != port)];
        moved[to] = [.. sides[to], port];
        return moved;
    }

    /// <summary>A set with one member changed.</summary>
    public static bool[] Toggled(bool[] set, int i)
    {
        bool[] copy = (bool[])set.Clone();
        copy[i] ^= true;
        return copy;
    }

    private LayoutTrial? LeaveNet(Candidate current)
    {
        if (model.SharingWires.Length == 0)
        {
            return null;
        }

        bool[] alone = (bool[])current.Choices.Alone.Clone();
        alone[model.SharingWires[random.Next(model.SharingWires.Length)]] ^= true;
        return Rewire(current, model, current.Order.Positions(), alone: alone);
    }

    private LayoutTrial? TurnEdge(Candidate current)
    {
        if (edgePorts.Length == 0)
        {
            return null;
        }

        return Rewire(current, model, current.Order.Positions(), leaves: Turned(current, edgePorts[random.Next(edgePorts.Length)]));
    }

    /// <summary>The choices of leaving with one port's turned round.</summary>
    public static Leaving[] Turned(Candidate current, int port)
    {
        var leaves = (Leaving[])current.Choices.Leaves.Clone();
        leaves[port] = EdgeTracks.LeavesLeft(current.Order.Graph, port) ? Leaving.Right : Leaving.Left;
        return leaves;
    }
}
