using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Makes a neighbor of an arrangement by one change of a kind drawn by lot.</summary>
internal sealed class Moves
{
    private readonly SheetModel _model;
    private readonly SeededRandom _chance;
    private readonly int[][] _partners, _facing;
    private readonly int[] _turning, _edgePorts, _freePorts;

    public Moves(SheetModel model, SeededRandom chance)
    {
        (_model, _chance) = (model, chance);
        var partners = new List<int>[model.Bodies];
        for (int l = 0; l < model.Links; l++)
        {
            int a = model.SlotBody[model.LinkFrom[l]], b = model.SlotBody[model.LinkTo[l]];
            (partners[a] ??= []).Add(b);
            (partners[b] ??= []).Add(a);
        }

        _partners = Array.ConvertAll(partners, p => p is null ? [] : p.Distinct().ToArray());
        _facing = FreePartners(model);
        _turning = [.. Enumerable.Range(0, model.Bodies).Where(b => model.BodyTurns[b])];
        _freePorts = [.. Enumerable.Range(0, model.PortCount).Where(p => model.PortFree[p] && model.PortSlot[p] >= 0)];
        _edgePorts = [.. Enumerable.Range(0, model.PortSide.Length).Where(
            p => model.PortSlot[p] >= 0 && model.PortSide[p] is PortSide.Top or PortSide.Bottom)];
    }

    /// <summary>A neighbor, or null if the lot fell on something that cannot be done.</summary>
    public LayoutTrial? Try(Candidate current)
    {
        if (_model.Bodies == 0)
        {
            return null;
        }

        int kind = _chance.Next(100);
        return kind < 36 ? MoveColumn(current)
            : kind < 72 ? Jolt(current)
            : kind < 79 ? Shuffle(current)
            : kind < 86 ? Turn(current)
            : kind < 91 ? Swap(current)
            : kind < 96 ? LeaveNet(current)
            : TurnEdge(current);
    }

    private static Choices Fresh(Candidate current, SheetModel model, int[]? sub = null, bool[]? turned = null, bool[]? alone = null, Leaving[]? leaves = null, int opposite = -1) => new()
    {
        Sub = sub ?? current.Choices.Sub,
        SideOrder = opposite < 0 ? current.Order.SideOrder : Across(model, current.Order.SideOrder, opposite),
        Opposite = opposite < 0 ? current.Choices.Opposite : Toggled(current.Choices.Opposite, opposite),
        Leaves = leaves ?? current.Choices.Leaves,
        Turned = turned ?? current.Choices.Turned,
        Alone = alone ?? current.Choices.Alone,
    };

    /// <summary>New choices with the order carried over.</summary>
    public static LayoutTrial Rewire(Candidate current, SheetModel model, int[] positions, int[]? sub = null, bool[]? turned = null, bool[]? alone = null, Leaving[]? leaves = null, int opposite = -1)
    {
        var choices = Fresh(current, model, sub, turned, alone, leaves, opposite);
        var order = Orderer.Carry(WireSegmenter.Cut(model, choices), current.Order, positions);
        return new LayoutTrial(choices, order, Changes.Between(current.Order, order));
    }

    private LayoutTrial? MoveColumn(Candidate current)
    {
        int body = _chance.Next(_model.Bodies), zone = _model.BodyZone[body];
        int[] sub = current.Choices.Sub;
        var movers = new List<int> { body };
        if (_chance.Is(40))
        {
            bool small = _chance.Is(50);
            foreach (int b in _partners[body])
            {
                bool isSmall = _model.BodySmall[b] && !_model.BodySmall[body];
                if (b != body && _model.BodyZone[b] == zone && (small ? isSmall : sub[b] == sub[body]))
                {
                    movers.Add(b);
                }
            }
        }

        int[] moved = SubColumns.Move(_model, sub, movers, body, _chance.Is(50) ? 1 : -1, _chance.Is(25));
        if (ReferenceEquals(moved, sub))
        {
            return null;
        }

        int[] at = current.Order.Positions();
        if (_chance.Is(30))
        {
            foreach (int b in movers)
            {
                at[b] = _chance.Next(ColumnOrder.Whole);
            }
        }

        return Rewire(current, _model, at, sub: moved);
    }

    private LayoutTrial? Jolt(Candidate current)
    {
        int c = _chance.Next(current.Order.Items.Length);
        int[] items = current.Order.Items[c];
        if (items.Length < 2)
        {
            return null;
        }

        int[] at = current.Order.Positions();
        int kind = _chance.Next(4);
        if (kind < 3)
        {
            at[items[_chance.Next(items.Length)]] = _chance.Next(ColumnOrder.Whole);
            if (kind == 2)
            {
                at[items[_chance.Next(items.Length)]] = _chance.Next(ColumnOrder.Whole);
            }
        }
        else
        {
            int a = _chance.Next(items.Length), b = _chance.Next(items.Length);
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
        int body = _chance.Next(_model.Bodies), side = (2 * body) + _chance.Next(2);
        int[] ports = current.Order.SideOrder[side];
        if (ports.Length < 2)
        {
            return null;
        }

        ports = (int[])ports.Clone();
        if (_chance.Is(60))
        {
            for (int k = ports.Length - 1; k > 0; k--)
            {
                int j = _chance.Next(k + 1);
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
        changed[order.Wiring.Columns.Of[body]] = true;
        return new LayoutTrial(current.Choices, order, changed);
    }

    // Numbered terminals take the places drawn for them in their own order.
    private void KeepNumbers(int[] ports, int[] before)
    {
        int next = 0;
        for (int k = 0; k < ports.Length; k++)
        {
            if (_model.PortNumbered[ports[k]])
            {
                while (!_model.PortNumbered[before[next]])
                {
                    next++;
                }

                ports[k] = before[next++];
            }
        }
    }

    private LayoutTrial? Turn(Candidate current)
    {
        if (_turning.Length == 0)
        {
            return null;
        }

        bool[] turned = (bool[])current.Choices.Turned.Clone();
        int body = _turning[_chance.Next(_turning.Length)];
        int[] facing = _facing[body];
        turned[body] ^= true;
        return Rewire(current, _model, current.Order.Positions(), turned: turned, opposite: facing.Length > 0 && _chance.Is(40) ? facing[_chance.Next(facing.Length)] : -1);
    }

    /// <summary>For each small body that may turn, the free terminals it is joined to: a fuse and the battery beside it face one way.</summary>
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
        _freePorts.Length == 0 ? null : Rewire(current, _model, current.Order.Positions(), opposite: _freePorts[_chance.Next(_freePorts.Length)]);

    // A port goes to the end of the other side; sifting finds its place.
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
        if (_model.SharingWires.Length == 0)
        {
            return null;
        }

        bool[] alone = (bool[])current.Choices.Alone.Clone();
        alone[_model.SharingWires[_chance.Next(_model.SharingWires.Length)]] ^= true;
        return Rewire(current, _model, current.Order.Positions(), alone: alone);
    }

    private LayoutTrial? TurnEdge(Candidate current)
    {
        if (_edgePorts.Length == 0)
        {
            return null;
        }

        return Rewire(current, _model, current.Order.Positions(), leaves: Turned(current, _edgePorts[_chance.Next(_edgePorts.Length)]));
    }

    /// <summary>The choices of leaving with one port's turned round.</summary>
    public static Leaving[] Turned(Candidate current, int port)
    {
        var leaves = (Leaving[])current.Choices.Leaves.Clone();
        leaves[port] = EdgeLanes.LeavesLeft(current.Order.Wiring, port) ? Leaving.Right : Leaving.Left;
        return leaves;
    }
}
