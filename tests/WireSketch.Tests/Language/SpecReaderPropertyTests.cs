using CsCheck;
using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

public sealed class SpecReaderPropertyTests
{
    private static readonly FilesInMemory Files = new(("parts.yaml", "wiresketch: 1\nparts: { lamp: { is: lamp, power: 5 W } }\n"));

    [Fact]
    public void A_spec_with_slips_is_read_and_every_finding_lies_in_its_file() =>
        Mutations.Of(Examples.BassUpgrade).Sample(Holds, iter: 500);

    [Fact]
    public void Any_text_is_read_and_every_finding_lies_in_its_file() => Gen.String.Sample(Holds);

    [Fact]
    public void Reading_twice_gives_the_same() =>
        Mutations.Of(Examples.BassUpgrade).Sample(text => Assert.Equal(Shown(text), Shown(text)), iter: 100);

    [Theory, InlineData("gear: { lamp: { is: lamp, power: |\n  } "
        + "}\n"), InlineData("job: { title:\n  "
            + "%\n"), InlineData("gear:\n  a: { is: lamp, notes: `\u2028 }\n"), InlineData("job:\n  title: @\n")]
    public void What_cannot_be_read_is_shown_on_one_line(string text) => Holds(text);

    private static void Holds(string text)
    {
        var (spec, findings) = SpecReader.Read(new SourceFile("a", text), Files);
        Assert.All(findings, f =>
        {
            Assert.True(f.At.Start >= 0 && f.At.Length >= 0 && f.At.End <= f.At.File.Text.Length, f.Message);
            Assert.NotNull(LanguageFindings.Of(f.Rule));
            Assert.DoesNotContain('\n', f.Message);
        });
        Assert.All(spec.Gear, g => Assert.Equal(g.Terminals.Length, g.Terminals.Select(t => t.Name).Where(n => n is not null).Count()));
        Assert.True(!spec.Broken || findings.Any(f => f.Blocks), "what is left out is reported");
    }

    private static string Shown(string text) =>
        string.Join('\n', SpecReader.Read(new SourceFile("a", text), Files).Findings.Select(f => $"{f.At} {f.Rule} {f.Message} {f.Help}"));
}
