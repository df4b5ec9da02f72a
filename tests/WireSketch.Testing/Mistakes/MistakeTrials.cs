using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Testing.Mistakes;

/// <summary>Makes mistakes in good specs, one at a time, and sees whether they are found.</summary>
public static class MistakeTrials
{
    /// <summary>Every kind of mistake.</summary>
    public static ImmutableArray<MistakeKind> Kinds { get; } =
        [
            .. SupplyMistakes.All, .. GroundMistakes.All, .. SpeakerMistakes.All, .. SignalMistakes.All, .. TurnOnMistakes.All,
            .. RouteMistakes.All, .. WritingMistakes.All
        ];

    /// <summary>Tries one spec with every kind.</summary>
    /// <param name="spec">The good spec.</param>
    /// <param name="files">The files it uses.</param>
    /// <param name="most">Places of a kind that are tried; where there are more, some are picked by chance, always the same.</param>
    public static IEnumerable<Trial> Of(GoodSpec spec, ISpecFiles files, int most)
    {
        var before = spec.Compiled.Findings.Select(Key).ToHashSet(StringComparer.Ordinal);
        var random = new Random(spec.File.Text.Length);
        foreach (var kind in Kinds)
        {
            var places = kind.Make(spec).ToArray();
            random.Shuffle(places);
            foreach (var mistake in places.Take(most))
            {
                var text = mistake.In(spec.File);
                var found = Compiler.Compile(new(spec.File.Name, text), files).Findings.Where(f => !before.Contains(Key(f))).ToArray();
                var caught = found.Any(f => kind.Rules.Contains(f.Rule) && (f.Blocks || !kind.IsError));
                yield return new(
                    spec.File.Name,
                    kind,
                    mistake.Place,
                    caught,
                    string.Join("; ", found.Select(f => $"{f.Rule} {f.Message}")));
            }
        }
    }

    /// <summary>Kind, mistakes made, mistakes found, and the rate.</summary>
    public static string Table(IEnumerable<Trial> trials)
    {
        var all = trials.ToArray();
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{"mistake",-48} {"class",-8} {"made",5} {"found",5}  rate\n");
        foreach (var kind in Kinds)
        {
            Row(text, kind.Name, kind.IsError ? "error" : "warning", [.. all.Where(t => t.Kind == kind)]);
        }

        Row(text, "all of error class", "", [.. all.Where(t => t.Kind.IsError)]);
        Row(text, "all others", "", [.. all.Where(t => !t.Kind.IsError)]);
        return text.ToString();
    }

    private static void Row(StringBuilder text, string name, string what, Trial[] trials)
    {
        var caught = trials.Count(t => t.Caught);
        var rate = trials.Length == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{100.0 * caught / trials.Length:0.0} %");
        text.Append(CultureInfo.InvariantCulture, $"{name,-48} {what,-8} {trials.Length,5} {caught,5}  {rate}\n");
    }

    /// <summary>A finding without its place, which an edit moves, and without its numbers, which it changes.</summary>
    private static string Key(Finding f) => $"{f.Rule} {f.Severity} {f.AcceptedBecause is not null} {string.Join(' ', f.Subjects)}";
}
