using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Rules;
using WireSketch.Testing;
using WireSketch.Testing.House;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Benchmarks;

/// <summary>
/// What holds the house together, as figures: how checking grows with a chain, and which types know which in the compiled assemblies.
/// </summary>
internal static partial class HouseTable
{
    private static readonly ImmutableArray<int> Sizes = [100, 200, 400, 800];
    private static readonly ImmutableArray<string> Stages = ["read", "wire", "solve", "check", "all"];

    public static int Print(string[] args)
    {
        if (args is ["rules", var size])
        {
            return Rules(int.Parse(size, CultureInfo.InvariantCulture));
        }

        Growth();
        Arrows();
        return 0;
    }

    private static void Growth()
    {
        // The first rounds are the compiler's, not ours.
        for (var round = 0; round < 12; round++)
        {
            Times(Sizes[1]);
        }

        Console.WriteLine($"{"bus bars",8} {string.Join(' ', Stages.Select(s => $"{s + " ms",9}"))}");
        var rows = Sizes.Select(n => (Size: n, Times: Enumerable.Range(0, 5).Select(_ => Times(n)).MinBy(t => t[^1])!)).ToArray();
        foreach (var (size, times) in rows)
        {
            Console.WriteLine($"{size,8} {string.Join(' ', times.Select(t => t.ToString("F1", CultureInfo.InvariantCulture).PadLeft(9)))}");
        }

        Console.WriteLine(
            $"{"growth",8} "
                + $"{string.Join(' ', Stages.Select((_, i) => Exponent([.. rows.Select(r => ((double)r.Size, r.Times[i]))]).ToString("F2", CultureInfo.InvariantCulture).PadLeft(9)))}");
    }

    /// <summary>Milliseconds of each stage, and of all together.</summary>
    private static double[] Times(int bars)
    {
        var file = new SourceFile("chain.wsk.yaml", ChainSpec.Write(bars));
        var files = new FilesInMemory();
        var clock = new ProcessorClock();
        var marks = new List<double>();
        var read = SpecReader.Read(file, files);
        marks.Add(clock.Milliseconds);
        var wiring = WiringResolver.Resolve(read.Value, SizeChoices.None).Value;
        marks.Add(clock.Milliseconds);
        var solved = ElectricalSolver.Solve(wiring);
        marks.Add(clock.Milliseconds);
        RuleBook.Check(new InstalledSystem(read.Value, wiring, solved));
        marks.Add(clock.Milliseconds);
        return [.. marks.Select((m, i) => i == 0 ? m : m - marks[i - 1]), marks[^1]];
    }

    /// <summary>Slope of the line of least squares through the logarithms.</summary>
    private static double Exponent(ImmutableArray<(double Size, double Time)> points)
    {
        var logs = points.Select(p => (X: Math.Log(p.Size), Y: Math.Log(p.Time))).ToArray();
        var (x, y) = (logs.Average(p => p.X), logs.Average(p => p.Y));
        return logs.Sum(p => (p.X - x) * (p.Y - y)) / logs.Sum(p => (p.X - x) * (p.X - x));
    }

    /// <summary>The rules that take longest on a chain.</summary>
    private static int Rules(int bars)
    {
        var read = SpecReader.Read(new SourceFile("chain.wsk.yaml", ChainSpec.Write(bars)), new FilesInMemory());
        var wiring = WiringResolver.Resolve(read.Value, SizeChoices.None).Value;
        var install = new InstalledSystem(read.Value, wiring, ElectricalSolver.Solve(wiring));
        foreach (var (id, time) in RuleBook.All.Select(r => (r.Card.Id, Time: Timed(() => Finding.InOrder(r.Check(install)))))
            .OrderByDescending(r => r.Time)
            .Take(15))
        {
            Console.WriteLine($"{time.ToString("F1", CultureInfo.InvariantCulture),9} ms {id}");
        }

        return 0;
    }

    private static double Timed(Func<object> action)
    {
        var clock = Stopwatch.StartNew();
        _ = action();
        return clock.Elapsed.TotalMilliseconds;
    }

    private static void Arrows()
    {
        var read = AssemblyArrows.Read(typeof(RuleBook).Assembly.Location, typeof(Drawing.Scenes.DrawingSet).Assembly.Location);
        var gear = new TypeName("WireSketch.Language", nameof(Gear));
        var rule = new TypeName("WireSketch.Rules", nameof(Rule));
        var kinds = read.TypeTests.Where(a => read.Derives(a.To, gear) && a.From.Namespace != "WireSketch.Language.Kinds")
            .Select(a => a.From)
            .Distinct()
            .Count();
        Console.WriteLine($"types outside the kinds that test for a concrete kind: {kinds}");
        var rules = read.Arrows.Where(a => read.Derives(a.From, rule) && read.Derives(a.To, rule)).ToArray();
        Console.WriteLine($"arrows from rule to rule: {rules.Length}{Listed(rules)}");

        // The first table of the page is that of the stages; the second orders what stands inside them.
        var page = Repository.Read("src/README.md");
        var stages = Row().Matches(page[..page.IndexOf("\n## ", StringComparison.Ordinal)])
            .Select((m, i) => (Name: m.Groups[1].Value, Order: i))
            .ToDictionary(s => s.Name, s => s.Order);
        var back = read.Arrows.Where(a => Order(a.From) < Order(a.To)).ToArray();
        Console.WriteLine($"arrows against the order of the stages: {back.Length}{Listed(back)}");

        // What stands in no stage composes them all: it comes last.
        int Order(TypeName type) =>
            type.Namespace.Split('.').Skip(1).Select(p => stages.GetValueOrDefault(p, -1)).FirstOrDefault(o => o >= 0, int.MaxValue);

        static string Listed(TypeUse[] arrows) => string.Concat(arrows.Take(10).Select(a => $"\n  {a.From} uses {a.To}"));
    }

    /// <summary>Time of the processor, which other work on the machine changes less than the time of the day.</summary>
    private sealed class ProcessorClock
    {
        private readonly TimeSpan start = Environment.CpuUsage.TotalTime;

        public double Milliseconds => (Environment.CpuUsage.TotalTime - start).TotalMilliseconds;
    }

    [GeneratedRegex(@"^\| `(\w+)` \|", RegexOptions.Multiline)]
    private static partial Regex Row();
}
