using System.Globalization;
using System.Text;
using System.Text.Json;

namespace WireSketch.Mutations;

/// <summary>The result of a run, as it is kept beside the tool.</summary>
/// <param name="Commit">Of the tree that was changed.</param>
/// <param name="Seed">Of the sample.</param>
/// <param name="Date">The day of the commit.</param>
/// <param name="Verdicts">All of them, in the order of the tree.</param>
internal sealed record LastRun(string Commit, int Seed, string Date, Verdict[] Verdicts)
{
    private static readonly JsonSerializerOptions Format = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Converters = { new System.Text.Json.Serialization.JsonStringEnumConverter() }
    };

    public static JsonSerializerOptions Json => Format;

    public static LastRun? Read(string path) =>
        File.Exists(path) ? JsonSerializer.Deserialize<LastRun>(File.ReadAllText(path), Format) : null;

    public void Save(string path) => File.WriteAllText(path, JsonSerializer.Serialize(this, Format) + "\n");

    /// <summary>The table by stage, then what survives with its reason.</summary>
    public string Print()
    {
        var text = new StringBuilder(string.Create(
            CultureInfo.InvariantCulture,
            $"Mutants of {Commit} ({Date}), seed {Seed}\n\nstage          mutants  killed  timed out  survived  not reached  killed %\n"));
        foreach (var stage in Verdicts.GroupBy(v => v.Mutant.Stage, StringComparer.Ordinal)
            .Select(g => (g.Key, Of: g.ToArray()))
            .Append(("all", Verdicts)))
        {
            int Count(Outcome outcome) => stage.Item2.Count(v => v.Outcome == outcome);
            var dead = Count(Outcome.Killed) + Count(Outcome.TimedOut);
            text.Append(
                CultureInfo.InvariantCulture,
                $"{stage.Item1,-14} {stage.Item2.Length,7} {Count(Outcome.Killed),7} {Count(Outcome.TimedOut),10} "
                    + $"{Count(Outcome.Survived),9} {Count(Outcome.NotReached),12} "
                    + $"{100.0 * dead / Math.Max(1, stage.Item2.Length),9:0.0}\n");
        }

        text.Append('\n');
        foreach (var v in Verdicts.Where(v => v.Outcome is Outcome.Survived or Outcome.NotReached))
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{v.Mutant.File}:{v.Mutant.Line} {v.Outcome}: {v.Mutant.Before}  =>  "
                    + $"{(v.Mutant.After.Length == 0 ? "(removed)" : v.Mutant.After)}{(v.Reason is null ? "" : $"\n    {v.Reason}")}\n");
        }

        return text.ToString();
    }
}
