namespace WireSketch.Benchmarks.Layouts;

/// <summary>Our figures beside those of each peer. A peer is compared on the graphs that it could draw.</summary>
internal sealed class Comparison(List<IPeer> peers)
{
    private readonly Figures[] _theirs = [.. peers.Select(_ => Figures.None)], _oursOfTheirs = [.. peers.Select(_ => Figures.None)];
    private readonly int[] _failed = new int[peers.Count];
    private Figures _ours = Figures.None;

    public void Add(Figures ours, Figures?[] theirs)
    {
        _ours += ours;
        for (int p = 0; p < peers.Count; p++)
        {
            if (theirs[p] is { } f)
            {
                _theirs[p] += f;
                _oursOfTheirs[p] += ours;
            }
            else
            {
                _failed[p]++;
            }
        }
    }

    public void Add(Comparison other)
    {
        _ours += other._ours;
        for (int p = 0; p < peers.Count; p++)
        {
            _theirs[p] += other._theirs[p];
            _oursOfTheirs[p] += other._oursOfTheirs[p];
            _failed[p] += other._failed[p];
        }
    }

    public void Print(string graphs)
    {
        LayoutTable.Row(graphs, "ours", _ours);
        for (int p = 0; p < peers.Count; p++)
        {
            LayoutTable.Row(_failed[p] > 0 ? $"  (failed or over time: {_failed[p]})" : "", peers[p].Name, _theirs[p]);
        }
    }

    public void PrintRatios()
    {
        for (int p = 0; p < peers.Count; p++)
        {
            var (a, b) = (_oursOfTheirs[p], _theirs[p]);
            Console.WriteLine($"ours to {peers[p].Name}: crossings {Ratio(a.Crossings, b.Crossings)}, bends per run {Ratio(a.BendsPerRun, b.BendsPerRun)}, detour {Ratio(a.Detour, b.Detour)}, least text {Ratio(a.Text, b.Text)}, time {Ratio(a.Seconds, b.Seconds)}");
        }

        Console.WriteLine("* dot's orthogonal lines end anywhere on a box, so its bends and detour are not those of a wiring drawing.");
        Console.WriteLine($"our breaches of laws: {_ours.Broken.Sum()}");
    }

    private static string Ratio(double a, double b) => b == 0 ? "-" : LayoutTable.Text(a / b, "0.00");
}
