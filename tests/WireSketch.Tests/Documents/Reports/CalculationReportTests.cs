using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using WireSketch.Documents.Reports;
using WireSketch.Installation;
using WireSketch.Rules;
using WireSketch.Testing;

namespace WireSketch.Tests.Documents.Reports;

public sealed partial class CalculationReportTests
{
    /// <summary>Volts and amps come from an iteration that stops at this share.</summary>
    private const double Iterated = 2e-5;

    public static TheoryData<string> Good => [.. ShippedSpecs.Good.Select(p => Path.GetFileName(p)[..^".wsk.yaml".Length])];

    // 4 AWG, 17 ft less 12 in: 4.8768 m of 21.15 mm² (ASTM B258) at 0.017241 ohm·mm²/m (IEC 60028) and 2 % lay: 4.055 mohm.
    [Fact]
    public void A_result_can_be_followed_by_hand()
    {
        var report = CalculationReport.From(Built.Shipped("one-amplifier").Install);
        var piece = report.Chapters.Single(c => c.Id == "conductors").Results.Single(r => r.Subject == "P1-2");
        Assert.Equal(0.017241 * 4.8768 / 21.15 * 1.02, piece.Values.Single(v => v.Symbol == "R20").Value!.Value, 0.5e-6);
        Assert.Equal("one-amplifier.wsk.yaml:40", piece.Inputs.Single(i => i.Symbol == "n").Origin);
        Assert.Equal(
            "17 ft, one-amplifier.wsk.yaml:40, less what lies before P1.fuse (12 in, one-amplifier.wsk.yaml:40)",
            piece.Inputs.Single(i => i.Symbol == "L").Origin);
    }

    /// <summary>
    /// Every formula is worked out anew from the inputs that are printed beside it, by a reader that knows nothing of the program.
    /// </summary>
    [Theory]
    [MemberData(nameof(Good))]
    public void Every_formula_gives_its_result(string spec)
    {
        Assert.True(WorkedOut(Built.Shipped(spec).Text("report.json"), spec) > 20);
    }

    /// <summary>
    /// The same for the small specs of the rules, right and wrong ones: starved loads, diodes, clad wire, ways over paths and what else
    /// comes up.
    /// </summary>
    [Fact]
    public void Every_formula_gives_its_result_in_every_example_of_a_rule()
    {
        var worked = 0;
        foreach (var card in RuleBook.All.Select(r => r.Card))
        {
            foreach (var text in new[] { card.Bad, card.Good })
            {
                var built = Built.From(Compiler.Compile(Example.File(text), FilesInMemory.None));
                if (built.Result.Install is not null)
                {
                    worked += WorkedOut(built.Text("report.json"), card.Id);
                    Assert.DoesNotContain("NaN", built.Text("report.md"), StringComparison.Ordinal);
                }
            }
        }

        Assert.True(worked > 2000, $"{worked} formulas");
    }

    private static int WorkedOut(string report, string spec)
    {
        using var json = JsonDocument.Parse(report);
        var worked = 0;
        foreach (var chapter in json.RootElement.GetProperty("chapters").EnumerateArray())
        {
            foreach (var calculation in chapter.GetProperty("results").EnumerateArray())
            {
                var known = Known(chapter.GetProperty("constants"), calculation.GetProperty("inputs"));
                foreach (var result in calculation.GetProperty("values").EnumerateArray())
                {
                    if (result.TryGetProperty("formula", out var formula))
                    {
                        var value = result.GetProperty("value").GetDouble();
                        var anew = FormulaReader.Evaluate(formula.GetString()!, known);
                        Assert.True(
                            Math.Abs(anew - value) <= (Iterated * Math.Abs(value)) + 2e-6,
                            $"{spec}, {chapter.GetProperty("id")}, {calculation.GetProperty("subject")}: {result.GetProperty("symbol")} "
                                + $"= {formula} is {anew}, not {value}");
                        worked++;
                    }

                    if (result.TryGetProperty("value", out var number)
                        && result.GetProperty("symbol").GetString() is { Length: > 0 } symbol)
                    {
                        known[symbol] = [number.GetDouble()];
                    }
                }
            }
        }

        return worked;
    }

    /// <summary>What is printed with its numbers multiplies out, within the digits that are printed.</summary>
    [Theory]
    [MemberData(nameof(Good))]
    public void Printed_numbers_multiply_out(string spec)
    {
        var lines = Built.Shipped(spec).Text("report.md").Split('\n').Where(l => Worked().IsMatch(l)).ToArray();
        Assert.NotEmpty(lines);
        foreach (var line in lines)
        {
            foreach (var step in line[(line.IndexOf(": ", StringComparison.Ordinal) + 2)..]
                .TrimEnd('.')
                .Replace("\\", "", StringComparison.Ordinal)
                .Split("; "))
            {
                var parts = step.Split(" = ");
                Assert.Equal(3, parts.Length);
                var printed = double.Parse(parts[2].Split(' ')[0], CultureInfo.InvariantCulture);
                var anew = FormulaReader.Evaluate(parts[1], new Dictionary<string, IReadOnlyList<double>>());
                var largest = Numbers().Matches(parts[1])
                    .Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture))
                    .DefaultIfEmpty(0)
                    .Max();

                // Six digits of what is taken from each other leave fewer of the difference.
                var room = parts[1].Contains('−') ? 3e-6 * largest : 0;
                Assert.True(
                    Math.Abs(anew - printed) <= (2e-4 * Math.Abs(printed)) + room + 1e-9,
                    $"{spec}: {step} gives {anew.ToString(CultureInfo.InvariantCulture)}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Good))]
    public void Every_input_has_an_origin_and_every_result_a_formula_or_how_it_was_found(string spec)
    {
        var chapters = CalculationReport.From(Built.Shipped(spec).Install).Chapters;
        foreach (var input in chapters.SelectMany(c => c.Constants.Concat(c.Results.SelectMany(r => r.Inputs))))
        {
            Assert.False(string.IsNullOrWhiteSpace(input.Origin), input.Name);
            Assert.False(input.Origin is "spec" or "default" or "wiring" or "table", $"{input.Name}: {input.Origin} says nothing");
            Assert.False(
                input.Origin.StartsWith("default", StringComparison.Ordinal) && input.Origin.Length <= "default: ".Length,
                input.Name);
        }

        foreach (var result in chapters.SelectMany(c => c.Results).SelectMany(r => r.Values))
        {
            Assert.True(result.Formula is not null ^ result.By is not null, result.Name);
        }
    }

    /// <summary>Places name a file and a line on which the words of the input stand.</summary>
    [Theory]
    [MemberData(nameof(Good))]
    public void A_place_holds_what_was_taken_from_it(string spec)
    {
        var built = Built.Shipped(spec);
        var files = built.Result.Spec.Used.Append(built.Result.File).ToDictionary(f => f.Name, StringComparer.Ordinal);
        var looked = 0;
        foreach (var input in CalculationReport.From(built.Install).Chapters
            .SelectMany(c => c.Constants.Concat(c.Results.SelectMany(r => r.Inputs))))
        {
            if (Place().Match(input.Origin) is { Success: true } m
                && files.TryGetValue(m.Groups[1].Value, out var file)
                && input.Terms is null
                && input.Symbol is not ("n" or "A"))
            {
                Assert.Contains(
                    input.Words,
                    file.Line(int.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture)),
                    StringComparison.Ordinal);
                looked++;
            }
        }

        Assert.True(looked > 5, $"{looked} places");
    }

    [Fact]
    public void Every_state_and_every_chapter_is_there()
    {
        var text = Built.Shipped("one-amplifier").Text("report.md");
        foreach (var heading in new[]
        {
            "Resistance of the conductors", "What the conductors may carry", "Loads and power of the channels", "What the devices take",
            "Volts and amps: full output", "Volts and amps: music",
            "Volts and amps: idle", "Volts and amps: engine off",
            "Volts and amps: standby", "Volts of the terminals", "Fuses and breakers", "A dead short to the body", "Levels at the inputs",
            "What wakes the devices", "Alternator, reserve and standby", "Lengths to cut",
        })
        {
            Assert.Contains($"## {heading}", text, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("two-amplifiers", "parts/shop-parts.yaml:")]
    [InlineData("camper", "camper.wsk.yaml:")]
    public void What_comes_from_another_file_says_so(string spec, string place)
    {
        var report = CalculationReport.From(Built.Shipped(spec).Install);
        Assert.Contains(
            report.Chapters.SelectMany(c => c.Results).SelectMany(r => r.Inputs),
            i => i.Origin.StartsWith(place, StringComparison.Ordinal));
    }

    // Two terminations more of 0.3 mohm each make P1-2 0.6 mohm more than with the usual 0.2 mohm.
    [Fact]
    public void A_termination_is_what_the_settings_say()
    {
        const string runs = """
            P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 17 ft, fuse: { rating: 60 A, at: 12 in }, through: firewall grommet, protect: loom }
            G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 14 in }
            R1: { from: switched, to: amp.remote, wire: 18 AWG, length: 8 ft }
            S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
            """;
        var (usual, more) = (R(Built.Of(runs)), R(Built.Of(runs, "settings: { termination: 0.5 mohm }")));
        Assert.Equal(0.0006, more - usual, 1e-5);
        Assert.Equal(
            "a.wsk.yaml:3",
            CalculationReport.From(Built.Of(runs, "settings: { termination: 0.5 mohm }").Install).Chapters
                .Single(c => c.Id == "conductors").Constants
                .Single(c => c.Symbol == "R_t").Origin);

        static double R(Built built) => built.Install.Answers.Conductors.Single(c => c.Conductor.Id == "P1-2").Resistance.Value;
    }

    /// <summary>Chapters that only some jobs have: resistors on a source, grounds of a chain, ways over paths, readings.</summary>
    [Fact]
    public void Rare_chapters_come_up_in_the_examples()
    {
        var seen = RuleBook.All.SelectMany(r => new[] { r.Card.Bad, r.Card.Good })
            .Select(t => Compiler.Compile(Example.File(t), FilesInMemory.None).Install)
            .OfType<InstalledSystem>()
            .SelectMany(i => CalculationReport.From(i).Chapters.Where(c => !c.Results.IsEmpty))
            .Select(c => c.Id)
            .ToHashSet(StringComparer.Ordinal);
        Assert.Superset(
            new HashSet<string>(["source-loads", "grounds", "routes", "readings", "energy", "faults", "cuts"], StringComparer.Ordinal),
            seen);
    }

    [Fact]
    public void What_was_chosen_names_the_rule_that_decided()
    {
        var report = CalculationReport.From(Built.Of("""
            P1: { from: battery.+, to: amp.+, wire: auto red, length: 17 ft, fuse: { rating: auto, at: 12 in }, through: firewall grommet, protect: loom }
            G1: { from: amp.-, to: bolt, wire: auto black, length: 14 in }
            R1: { from: switched, to: amp.remote, wire: 18 AWG, length: 8 ft }
            S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
            """).Install);
        var sizes = report.Chapters.Single(c => c.Id == "sizes").Results;
        Assert.Equal(["P1", "G1", "P1 fuse"], sizes.Select(s => s.Subject));
        Assert.Equal("supply/drop", sizes[0].Inputs.Single(i => i.Name == "decided by").Words);
        var amps = sizes[2].Inputs.Single(i => i.Symbol == "I").Value!.Value;
        Assert.Equal(Math.Ceiling(amps / 0.9 / 10) * 10, sizes[2].Values.Single(v => v.Symbol == "I_n").Value!.Value, 5.01);
    }

    [Fact]
    public void The_report_for_programs_can_be_read_and_is_the_same_each_time()
    {
        foreach (var name in ShippedSpecs.Good)
        {
            var built = Built.Shipped(Path.GetFileName(name)[..^".wsk.yaml".Length]);
            var text = built.Text("report.json");
            using var json = JsonDocument.Parse(text);
            Assert.Equal(1, json.RootElement.GetProperty("version").GetInt32());
            Assert.Equal(text, built.Text("report.json"));
        }
    }

    private static Dictionary<string, IReadOnlyList<double>> Known(params JsonElement[] lists)
    {
        var known = new Dictionary<string, IReadOnlyList<double>>(StringComparer.Ordinal);
        foreach (var input in lists.SelectMany(l => l.EnumerateArray()).Where(i => i.GetProperty("symbol").GetString() is { Length: > 0 }))
        {
            known[input.GetProperty("symbol").GetString()!] = input.TryGetProperty("terms", out var terms)
                ? [.. terms.EnumerateArray().Select(t => t.GetProperty("value").GetDouble())]
                : [input.GetProperty("value").GetDouble()];
        }

        return known;
    }

    [GeneratedRegex(@"^[^|\-#].*: \S+ = .+ = .+\.$")]
    private static partial Regex Worked();

    [GeneratedRegex(@"[0-9]+(\.[0-9]+)?")]
    private static partial Regex Numbers();

    [GeneratedRegex(@"^([^ ,:]+):([0-9]+)$")]
    private static partial Regex Place();
}
