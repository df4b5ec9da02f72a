namespace WireSketch.Benchmarks.Layouts;

/// <summary>Our figures beside those of each peer. A peer is compared on the graphs that it could draw.</summary>
internal sealed class Comparison(List<IPeer> peers)
{
    private readonly Figures[] theirs = [.. peers.Select(_ => Figures.None)], oursOfTheirs = [.. peers.Select(_ => Figures.None)];
    private readonly int[] failed = new int[peers.Count];
    private Figures ours = Figures.None;

    public void Add(Figures ours, Figures?[] theirs)
    {
        this.ours += ours;
        for (int p = 0; p < peers.Count; p++)
        {
            if (theirs[p] is { } f)
            {
                this.theirs[p] += f;
                oursOfTheirs[p] += ours;
            }
            else
            {
                failed[p]++;
            }
        }
    }

    public void Add(Comparison other)
    {
        ours += other.ours;
        for (int p = 0; p < peers.Count; p++)
        {
            theirs[p] += other.theirs[p];
            oursOfTheirs[p] += other.oursOfTheirs[p];
            failed[p] += other.failed[p];
        }
    }

    public void Print(string graphs)
    {
        LayoutTable.Row(graphs, "ours", ours);
        for (int p = 0; p < peers.Count; p++)
        {
            LayoutTable.Row(failed[p] > 0 ? $"  (failed or over time: {failed[p]})" : "", peers[p].Name, theirs[p]);
        }
    }

    public void PrintRatios()
    {
        for (int p = 0; p < peers.Count; p++)
        {
            var (a, b) = (oursOfTheirs[p], theirs[p]);
            Console.WriteLine(
                $"ours to {peers[p].Name}: crossings {Ratio(a.Crossings, b.Crossings)}, bends per run "
                    + $"{Ratio(a.BendsPerRun, b.BendsPerRun)}, detour {Ratio(a.Detour, b.Detour)}, least text {Ratio(a.Text, b.Text)}, "
                    + $"time {Ratio(a.Seconds, b.Seconds)}");
        }

        Console.WriteLine("* dot's orthogonal lines end anywhere on a box, so its bends and detour are not those of a wiring drawing.");
        Console.WriteLine($"our breaches of laws: {ours.Broken.Sum()}");
    }

    private static string Ratio(double a, double b) => b == 0 ? "-" : LayoutTable.Text(a / b, "0.00");
}
