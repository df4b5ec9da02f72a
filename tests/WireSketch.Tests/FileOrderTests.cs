using System.Globalization;
using WireSketch.Documents.Reports;
using WireSketch.Language.Kinds;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests;

/// <summary>
/// The order in which gear and runs are written changes no result. Only that of batteries means something: the alternator charges the
/// first.
/// </summary>
public sealed class FileOrderTests
{
    public static TheoryData<string> Good => [.. ShippedSpecs.Good];

    [Theory, MemberData(nameof(Good))]
    public void The_order_of_the_file_changes_no_finding_and_no_value(string name)
    {
        var file = ShippedSpecs.Open(name);
        var before = Compiler.Compile(file, ShippedSpecs.Files);
        var batteries = before.Spec.Gear.OfType<Battery>().Select(b => b.Id).ToHashSet(StringComparer.Ordinal);
        for (var seed = 1; seed <= (before.Spec.Gear.Length > 100 ? 1 : 6); seed++)
        {
            var shuffled = FileOrder.Shuffled(file, new(seed), batteries.Contains);
            Assert.NotEqual(file.Text, shuffled.Text);
            var after = Compiler.Compile(shuffled, ShippedSpecs.Files);
            Assert.Equal(Findings(before), Findings(after));
            Assert.Equal(Values(before), Values(after));
            Assert.Equal(Volts(before), Volts(after));
        }
    }

    [Fact]
    public void Sizes_that_are_chosen_do_not_hang_on_the_order_of_the_file()
    {
        // Every supply wire of the two amplifiers is left to the compiler.
        var text = ShippedSpecs.Open("specs/two-amplifiers.wsk.yaml").Text
            .Replace("wire: 2/0 AWG red 105 C", "wire: auto red", StringComparison.Ordinal)
            .Replace("wire: 4 AWG red 105 C", "wire: auto red", StringComparison.Ordinal)
            .Replace("wire: 2 AWG red 105 C", "wire: auto red", StringComparison.Ordinal);
        var file = new SourceFile("auto.wsk.yaml", text);
        var before = Compiler.Compile(file, ShippedSpecs.Files).Install!.Sizes;
        Assert.Equal(3, before.Wires.Count);
        for (var seed = 1; seed <= 3; seed++)
        {
            Assert.Equal(
                before.Wires,
                Compiler.Compile(FileOrder.Shuffled(file, new(seed), id => id == "battery"), ShippedSpecs.Files).Install!.Sizes.Wires);
        }
    }

    private static string[] Findings(Compilation c) =>
        [
            .. c.Findings.Select(f =>
                $"{f.Rule} {f.Severity} {f.AcceptedBecause} {string.Join(' ', f.Subjects.Order(StringComparer.Ordinal))}")
                .Order(StringComparer.Ordinal)
        ];

    /// <summary>Every value of the calculation report, as printed.</summary>
    private static string[] Values(Compilation c) =>
        [.. from chapter in CalculationReport.From(c.Install!).Chapters
            from result in chapter.Results
            from value in result.Values
            let subject = string.Join(", ", result.Subject.Split(", ").Order(StringComparer.Ordinal))
            select $"{chapter.Id} {subject} {value.Name} {value.Words}" into line
            orderby line
            select line];

    /// <summary>Volts of every terminal in every state, to a nanovolt or so.</summary>
    private static string[] Volts(Compilation c) =>
        [.. from state in c.Install!.Answers.States
            from terminal in c.Install.Wiring.Terminals
            let volts = state.Volts[terminal.Index]
            orderby state.State, terminal.Id
            select string.Create(
                CultureInfo.InvariantCulture,
                $"{state.State} {terminal.Id} {(volts is { } v ? Math.Round(v.Value, 8) + 0.0 : null)}")
        ];
}
