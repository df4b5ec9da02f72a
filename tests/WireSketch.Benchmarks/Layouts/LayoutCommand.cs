using System.Diagnostics;
using System.Globalization;
using WireSketch.Drawing.Layout;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>
/// layout [--systems N] [--seed S] [--sizes 8,25] [--effort E] [--no-shipped] [--no-peers] [--no-growth]: laws, crossings,
/// bends, detour, size of text and time of our layouts, and of the same graphs by general libraries, and how time grows.
/// </summary>
internal static class LayoutCommand
{
    public static int Run(string[] args)
    {
        int systems = 200, seed = 1;
        double effort = 1;
        int[] sizes = [];
        bool shipped = true, peers = true, growth = true, each = false;
        for (int i = 0; i < args.Length; i++)
        {
            switch (args[i])
            {
                case "--systems": systems = Whole(args[++i]); break;
                case "--seed": seed = Whole(args[++i]); break;
                case "--effort": effort = double.Parse(args[++i], CultureInfo.InvariantCulture); break;
                case "--sizes": sizes = [.. args[++i].Split(',').Select(Whole)]; break;
                case "--no-shipped": shipped = false; break;
                case "--no-peers": peers = false; break;
                case "--no-growth": growth = false; break;
                case "--each": each = true; break;
                default:
                    Console.Error.WriteLine($"Unknown option {args[i]}.");
                    return 2;
            }
        }

        var subjects = (shipped ? Subject.Shipped() : []).Concat(sizes.Length == 0
            ? Subject.Generated(systems, seed)
            : sizes.SelectMany(d => Enumerable.Range(seed, systems).Select(s => Subject.Of(d, s))));
        Compare(subjects.Select(s => s with { Options = s.Options with { Effort = effort } }), peers ? Peers() : [], each);
        if (growth)
        {
            Growth.Run();
        }

        return 0;
    }

    private static int Whole(string words) => int.Parse(words, CultureInfo.InvariantCulture);

    private static List<IPeer> Peers()
    {
        var peers = new List<IPeer>();
        Take(ElkPeer.Start(out string why), why);
        Take(DotPeer.Start(out why), why);
        return peers;

        void Take(IPeer? peer, string missing)
        {
            if (peer is not null)
            {
                peers.Add(peer);
            }
            else
            {
                Console.WriteLine("Left out: " + missing);
            }
        }
    }

    private static void Compare(IEnumerable<Subject> subjects, List<IPeer> peers, bool each)
    {
        LayoutTable.Heading();
        var total = new Comparison(peers);
        foreach (var row in subjects.GroupBy(s => s.Class))
        {
            var sum = new Comparison(peers);
            foreach (var subject in row)
            {
                var watch = Stopwatch.StartNew();
                var layout = SheetArranger.Arrange(subject.Graph, subject.Options);
                var ours = Figures.Of(subject.Graph, layout, subject.Options, true, 1, watch.Elapsed.TotalSeconds);
                sum.Add(ours, [.. peers.Select(p => p.Measure(subject, layout))]);
                if (each)
                {
                    LayoutTable.Row("  " + subject.Name, "ours", ours);
                }
            }

            sum.Print(row.Key);
            total.Add(sum);
        }

        total.Print("total");
        total.PrintRatios();
        peers.ForEach(p => p.Dispose());
    }
}
