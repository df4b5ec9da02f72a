namespace WireSketch.Electrical.Solver;

/// <summary>
/// The order in which unknowns are eliminated so that few new entries arise: ends of trees first (no new entry at all), then
/// always an unknown with the fewest neighbors left (minimum degree; Tinney and Walker 1967).
/// </summary>
internal static class EliminationOrder
{
    /// <summary>Order of elimination by place.</summary>
    /// <param name="count">Number of unknowns.</param>
    /// <param name="edges">Pairs of unknowns with an entry off the diagonal, each once: the lower one in the high half.</param>
    public static int[] Of(int count, ReadOnlySpan<long> edges)
    {
        var order = new int[count];
        var degree = new int[count];

        // Of a node with one neighbor left, the sum (by exclusive or) of its neighbors is that neighbor.
        var neighbors = new int[count];
        foreach (var edge in edges)
        {
            var (a, b) = ((int)(edge >> 32), (int)edge);
            degree[a]++;
            degree[b]++;
            neighbors[a] ^= b;
            neighbors[b] ^= a;
        }

        var done = new bool[count];
        var next = 0;
        for (var i = 0; i < count; i++)
        {
            for (var at = i; !done[at] && degree[at] <= 1;)
            {
                done[at] = true;
                order[next++] = at;
                if (degree[at] == 0)
                {
                    break;
                }

                var other = neighbors[at];
                neighbors[other] ^= at;
                degree[other]--;
                at = other;
            }
        }

        if (next < count)
        {
            new Core(count, edges, done, degree).Finish(order, next);
        }

        return order;
    }

    /// <summary>What is left when all trees are gone.</summary>
    private sealed class Core
    {
        private readonly bool[] done;
        private readonly int[] degree;
        private readonly List<int>?[] near;
        private readonly HashSet<long> joined = [];
        private readonly int[] first;
        private readonly int[] after;
        private readonly int[] before;

        public Core(int count, ReadOnlySpan<long> edges, bool[] done, int[] degree)
        {
            this.done = done;
            this.degree = degree;
            near = new List<int>?[count];
            first = new int[count + 1];
            after = new int[count];
            before = new int[count];
            Array.Fill(first, -1);
            foreach (var edge in edges)
            {
                var (a, b) = ((int)(edge >> 32), (int)edge);
                if (!done[a] && !done[b])
                {
                    Join(a, b);
                }
            }

            for (var i = count - 1; i >= 0; i--)
            {
                if (!done[i])
                {
                    Put(i);
                }
            }
        }

        public void Finish(int[] order, int next)
        {
            var least = 0;
            var live = new List<int>();
            while (next < order.Length)
            {
                while (first[least] < 0)
                {
                    least++;
                }

                var node = first[least];
                Take(node);
                done[node] = true;
                order[next++] = node;
                live.Clear();
                foreach (var other in near[node] ?? [])
                {
                    if (!done[other])
                    {
                        live.Add(other);
                        Take(other);
                        degree[other]--;
                    }
                }

                near[node] = null;
                for (var i = 0; i < live.Count; i++)
                {
                    for (var j = i + 1; j < live.Count; j++)
                    {
                        if (Join(live[i], live[j]))
                        {
                            degree[live[i]]++;
                            degree[live[j]]++;
                        }
                    }
                }

                foreach (var other in live)
                {
                    Put(other);
                    least = Math.Min(least, degree[other]);
                }
            }
        }

        private bool Join(int a, int b)
        {
            if (!joined.Add(((long)Math.Min(a, b) << 32) | (uint)Math.Max(a, b)))
            {
                return false;
            }

            (near[a] ??= []).Add(b);
            (near[b] ??= []).Add(a);
            return true;
        }

        private void Put(int node)
        {
            var head = first[degree[node]];
            after[node] = head;
            before[node] = -1;
            if (head >= 0)
            {
                before[head] = node;
            }

            first[degree[node]] = node;
        }

        private void Take(int node)
        {
            if (before[node] >= 0)
            {
                after[before[node]] = after[node];
            }
            else
            {
                first[degree[node]] = after[node];
            }

            if (after[node] >= 0)
            {
                before[after[node]] = before[node];
            }
        }
    }
}
