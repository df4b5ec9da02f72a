namespace WireSketch.Electrical.Solver;

/// <summary>
/// Currents through branches of no resistance: what Kirchhoff's current law leaves for them. In a ring of them the last closes no
/// current.
/// </summary>
internal static class ZeroOhmBranches
{
    public static void Fill(DcCircuit circuit, CircuitIslands parts, double[] amps)
    {
        var branches = circuit.Branches;
        var shorts = Enumerable.Range(0, branches.Count).Where(i => branches[i].IsShort && branches[i].A != branches[i].B).ToArray();
        if (shorts.Length == 0)
        {
            return;
        }

        // A tree over every merged node, grown from its lowest member: there the reference stands if it is among them.
        var at = new List<(int Branch, int Other)>?[circuit.Nodes];
        foreach (var i in shorts)
        {
            (at[branches[i].A] ??= []).Add((i, branches[i].B));
            (at[branches[i].B] ??= []).Add((i, branches[i].A));
        }

        var inflow = new double[circuit.Nodes];
        for (var i = 0; i < branches.Count; i++)
        {
            if (!branches[i].IsShort)
            {
                inflow[branches[i].A] -= amps[i];
                inflow[branches[i].B] += amps[i];
            }
        }

        var seen = new bool[circuit.Nodes];
        var order = new List<(int Node, int Branch, int From)>();
        for (var root = 0; root < circuit.Nodes; root++)
        {
            if (at[root] is null || parts.Merged.Root(root) != root)
            {
                continue;
            }

            order.Clear();
            seen[root] = true;
            order.Add((root, -1, -1));
            for (var i = 0; i < order.Count; i++)
            {
                foreach (var (branch, other) in at[order[i].Node]!)
                {
                    if (!seen[other])
                    {
                        seen[other] = true;
                        order.Add((other, branch, order[i].Node));
                    }
                }
            }

            for (var i = order.Count - 1; i > 0; i--)
            {
                var (node, branch, from) = order[i];
                amps[branch] = branches[branch].A == node ? inflow[node] : -inflow[node];
                inflow[from] += inflow[node];
            }
        }
    }
}
