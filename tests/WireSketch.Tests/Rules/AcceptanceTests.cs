using WireSketch.Diagnostics;
using WireSketch.Rules;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>An acceptance stands for the finding as it was: what became graver is open again.</summary>
public sealed class AcceptanceTests
{
    private const string Wiring = """
        gear:
          battery: { is: battery, origin: factory, capacity: 70 Ah }
          beacon: { is: general load, current: 10 A, behaves: current }
          bolt: { is: chassis point, surface: bare metal }
        accept:
          - { rule: RULE, at: P1, because: the holder is of thick cable }
        runs:
          P1: { from: battery.+, to: beacon.+, wire: WIRE red, length: 9 ft, fuse: { rating: 60 A, at: 6 in } }
          G1: { from: beacon.-, to: bolt, wire: 10 AWG black, length: 10 in }
        """;

    /// <summary>60 A ahead of 16 AWG is an error, by the ampacity of 33 CFR 183.425 Table 5.</summary>
    [Theory]
    [InlineData("supply/fuse-above-wire", "an error is accepted with its severity and its value")]
    [InlineData("supply/fuse-above-wire, severity: error", "an error is accepted with its severity and its value")]
    [InlineData("supply/fuse-above-wire, severity: warning, value: 60 A", "it was accepted as warning and is error now")]
    [InlineData("supply/fuse-above-wire, severity: error, value: 50 A", "50 A was accepted, and it is 60 A now")]
    [InlineData("supply/fuse-above-wire, severity: error, value: thick", "\"thick\" is not a value like 60 A")]
    public void Open_again(string entry, string says)
    {
        var finding = Fuse(entry);
        Assert.Null(finding.AcceptedBecause);
        Assert.True(finding.Blocks);
        var note = Assert.Single(finding.Notes, n => n.Message.Contains("to accept it", StringComparison.Ordinal));
        Assert.Contains(says, note.Message, StringComparison.Ordinal);
        Assert.EndsWith(
            "{ rule: supply/fuse-above-wire, at: P1, severity: error, value: 60 A, because: the holder is of thick cable }",
            note.Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("supply/fuse-above-wire, severity: error, value: 60 A")]
    [InlineData("supply/fuse-above-wire, severity: error, value: 70 A")]
    public void What_did_not_become_graver_stays_accepted(string entry) =>
        Assert.Equal("the holder is of thick cable", Fuse(entry).AcceptedBecause);

    [Fact]
    public void The_entry_that_is_printed_accepts_what_it_is_printed_for()
    {
        var note = Fuse("supply/fuse-above-wire").Notes.Single(n => n.Message.Contains("to accept it", StringComparison.Ordinal)).Message;
        var entry = note[(note.IndexOf('{', StringComparison.Ordinal) + 1)..^1];
        var text = Wiring.Replace("WIRE", "16 AWG", StringComparison.Ordinal)
            .Replace("{ rule: RULE, at: P1, because: the holder is of thick cable }", $"{{{entry}}}", StringComparison.Ordinal);
        Assert.NotNull(
            Compiler.Compile(Example.File(text), FilesInMemory.None).Findings
                .Single(f => f.Rule == "supply/fuse-above-wire").AcceptedBecause);
    }

    [Theory, MemberData(nameof(Former))]
    public void An_entry_of_a_former_id_says_the_one_of_today(string former)
    {
        var now = FormerRuleIds.NowOf(former)!;
        Assert.NotNull(RuleBook.Find(now));
        Assert.Null(RuleBook.Find(former));
        var idle = Compile(former).Single(f => f.Rule == Suppressions.Unmatched);
        Assert.Contains($"{former} is called {now} now", idle.Message, StringComparison.Ordinal);
        Assert.Equal($"write rule: {now}", idle.Help);
    }

    public static TheoryData<string> Former => [.. FormerRuleIds.All];

    private static Finding Fuse(string entry) => Compile(entry).Single(f => f.Rule == "supply/fuse-above-wire");

    private static IEnumerable<Finding> Compile(string entry) =>
        Compiler.Compile(
            Example.File(Wiring.Replace("WIRE", "16 AWG", StringComparison.Ordinal).Replace("RULE", entry, StringComparison.Ordinal)),
            FilesInMemory.None).Findings;
}
