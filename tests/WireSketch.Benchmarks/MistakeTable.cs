using WireSketch.Testing;
using WireSketch.Testing.Mistakes;

namespace WireSketch.Benchmarks;

/// <summary>Prints how many of the mistakes that are made in the shipped specs are found, by kind.</summary>
internal static class MistakeTable
{
    /// <summary>Places of a kind that are tried in a spec of hundreds of devices.</summary>
    private const int FewOfMany = 2;

    /// <param name="words">Names of specs to look at alone, such as <c>camper</c>.</param>
    public static int Print(string[] words)
    {
        var trials = new List<Trial>();
        foreach (var name in ShippedSpecs.Good.Where(n => words.Length == 0 || words.Any(w => n.Contains(w, StringComparison.Ordinal))))
        {
            var spec = new GoodSpec(ShippedSpecs.Open(name), ShippedSpecs.Files);
            trials.AddRange(MistakeTrials.Of(spec, ShippedSpecs.Files, spec.Gear.Length > 100 ? FewOfMany : int.MaxValue));
        }

        foreach (var miss in trials.Where(t => !t.Caught))
        {
            Console.WriteLine(
                $"missed ({(miss.Kind.IsError ? "error" : "warning")}): {miss.Kind.Name}, {miss.Spec} {miss.Place}: "
                    + $"{(miss.Found.Length == 0 ? "nothing found" : miss.Found)}");
        }

        Console.Write(MistakeTrials.Table(trials));
        return trials.Any(t => !t.Caught && t.Kind.IsError) ? 1 : 0;
    }
}
