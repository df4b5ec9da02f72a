using WireSketch.Diagnostics;
using WireSketch.Tables;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

/// <summary>
/// Slips of people who type a spec, written down before the code that answers them: of each the first message stands at the slip
/// and names the cure. Right forms among them have no message.
/// </summary>
public sealed class SlipTests
{
    /// <summary>Rows that wait for a word of the language that is not there yet, with the word.</summary>
    private static readonly Dictionary<string, string> Waiting = new() { ["080-date-day-first"] = "job.valid-until" };

    [Fact]
    public void The_first_message_is_at_the_slip_and_names_the_cure()
    {
        var rows = CsvTable.Parse(Repository.Read("tests/WireSketch.Tests/Data/slips.csv")).Rows;
        var failed = rows.Select(r => (Id: r["id"], Trouble: Trouble(r))).Where(r => r.Trouble is not null).ToArray();

        Assert.True(rows.Length > 100);
        Assert.True(
            failed.All(f => Waiting.ContainsKey(f.Id)),
            $"{rows.Length - failed.Length} of {rows.Length}:\n{string.Join('\n', failed.Select(f => $"{f.Id}: {f.Trouble}"))}");
        Assert.All(Waiting.Keys, w => Assert.Contains(w, failed.Select(f => f.Id)));
    }

    private static string? Trouble(CsvTable.Row row)
    {
        var (line, column) = ((int)row.Number("line"), (int)row.Number("column"));
        var text = Repository.Read($"tests/WireSketch.Tests/Data/slips/{row["id"]}.wsk.yaml");
        var first = Compiler.Compile(new SourceFile(row["id"] + ".wsk.yaml", text), FilesInMemory.None).Findings
            .Where(f => f.Severity > Severity.Advice)
            .OrderBy(f => f.At.Start)
            .FirstOrDefault();
        if (line == 0 || first is null)
        {
            return line == 0 == first is null ? null : first is null ? "no message" : Said(first);
        }

        var cured = $"{first.Message} {first.Help}".Contains(row["cure"], StringComparison.Ordinal);
        return cured && (first.At.Line, first.At.Column) == (line, column) ? null : $"{line}:{column} {row["cure"]} <- {Said(first)}";
    }

    private static string Said(Finding f) => $"{f.At.Line}:{f.At.Column} {f.Message}. {f.Help}";
}
