using CsCheck;
using WireSketch.Electrical.Solver;

namespace WireSketch.Tests.Electrical.Solver;

public sealed class SymmetricMatrixTests
{
    [Fact]
    public void It_solves_what_it_was_given() => Gen.Int[1, 1_000_000].Sample(
        seed =>
        {
            var random = new Random(seed);
            var n = 1 + random.Next(40);
            var edges = Edges(random, n, random.Next(3 * n));
            var matrix = new SymmetricMatrix(n, edges);
            var dense = new double[n, n];
            for (var round = 0; round < 2; round++)
            {
                Fill(random, matrix, dense, n, edges);
                var x = Enumerable.Range(0, n).Select(_ => random.NextDouble() - 0.5).ToArray();
                var side = Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Sum(j => dense[i, j] * x[j])).ToArray();
                Assert.True(matrix.Factor());
                matrix.Solve(side);
                Assert.All(x.Zip(side), p => Assert.Equal(p.First, p.Second, 1e-9));

                // A column of the inverse is what a unit on the right gives.
                var (one, two) = (random.Next(n), random.Next(n));
                var unit = new double[n];
                unit[one] = 1;
                matrix.Solve(unit);
                Assert.Equal(unit[two], matrix.Inverse(two, one), 1e-9);
            }
        },
        iter: 300);

    [Fact]
    public void It_knows_what_is_not_positive_definite()
    {
        var matrix = new SymmetricMatrix(2, [SymmetricMatrix.Key(0, 1)]);
        matrix.Add(matrix.Diagonal(0), 1);
        matrix.Add(matrix.Diagonal(1), 1);
        matrix.Add(matrix.Slot(0, 1), -2);
        Assert.False(matrix.Factor());
        matrix.Add(matrix.Slot(0, 1), 1.5);
        Assert.True(matrix.Factor());
    }

    [Theory, InlineData(1_000), InlineData(20_000)]
    public void A_tree_takes_no_new_entries(int n)
    {
        var random = new Random(n);
        var edges = Enumerable.Range(1, n - 1).Select(i => SymmetricMatrix.Key(random.Next(i), i)).Order().ToArray();
        Assert.Equal(n - 1, new SymmetricMatrix(n, edges).FactorLength);
    }

    [Fact]
    public void Ten_thousand_loads_between_two_bars_take_one_new_entry()
    {
        const int loads = 10_000;
        var edges = Enumerable.Range(2, loads)
            .SelectMany(i => new[] { SymmetricMatrix.Key(0, i), SymmetricMatrix.Key(1, i) })
            .Order()
            .ToArray();
        Assert.Equal((2 * loads) + 1, new SymmetricMatrix(loads + 2, edges).FactorLength);
    }

    [Fact]
    public void Two_mirrored_trees_joined_at_their_ends_stay_sparse()
    {
        // Supply and return of every load in cables of their own.
        const int n = 5_000;
        var random = new Random(1);
        var edges = new List<long>();
        for (var i = 1; i < n; i++)
        {
            var from = random.Next(i);
            edges.Add(SymmetricMatrix.Key(from, i));
            edges.Add(SymmetricMatrix.Key(n + from, n + i));
            edges.Add(SymmetricMatrix.Key(i, n + i));
        }

        var length = new SymmetricMatrix(2 * n, [.. edges.Order()]).FactorLength;
        Assert.True(length < 4 * edges.Count, $"{length} entries for {edges.Count}");
    }

    private static long[] Edges(Random random, int n, int count) =>
        [
            .. Enumerable.Range(0, count)
                .Select(_ => (random.Next(n), random.Next(n)))
                .Where(e => e.Item1 != e.Item2)
                .Select(e => SymmetricMatrix.Key(e.Item1, e.Item2))
                .Distinct()
                .Order()
        ];

    /// <summary>Conductances between nodes, and a little from each to the reference.</summary>
    private static void Fill(Random random, SymmetricMatrix matrix, double[,] dense, int n, long[] edges)
    {
        matrix.Clear();
        Array.Clear(dense);
        for (var i = 0; i < n; i++)
        {
            var g = 0.1 + random.NextDouble();
            matrix.Add(matrix.Diagonal(i), g);
            dense[i, i] += g;
        }

        foreach (var edge in edges)
        {
            var (a, b, g) = ((int)(edge >> 32), (int)edge, 10 * random.NextDouble());
            matrix.Add(matrix.Diagonal(a), g);
            matrix.Add(matrix.Diagonal(b), g);
            matrix.Add(matrix.Slot(a, b), -g);
            dense[a, a] += g;
            dense[b, b] += g;
            dense[a, b] -= g;
            dense[b, a] -= g;
        }
    }
}
