using WireSketch.Testing;

namespace WireSketch.Tests.Language;

public sealed class ResponseFilesTests
{
    private const string Spec = """
        gear:
          radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
        response:
          - { at: radio.front, volume: 20, csv: front.csv }
        """;

    [Theory]
    [InlineData("63 Hz, -3 dB\n1 kHz, 0.5 dB\n")]
    [InlineData("Hz,dB\n63,-3\n1000,0.5\n")]
    [InlineData("Frequency (Hz);Level (dB);Phase\r\n63;-3;12\r\n1000;0.5;0\r\n")]
    [InlineData("# pink noise\n\"band\"\t\"level\"\n63 Hz\t-3 dB\n\n1000 Hz\t0.5 dB")]
    public void Levels_are_read_with_units_or_under_a_heading_that_names_them(string text)
    {
        var compiled = Compiler.Compile(Example.File(Spec), new FilesInMemory(("front.csv", text)));
        Assert.DoesNotContain(compiled.Findings.Select(f => f.Message), m => m.Contains("front.csv", StringComparison.Ordinal));
        var levels = compiled.Spec.Responses[0].Levels;
        Assert.Equal([(63.0, -3.0), (1000.0, 0.5)], levels.Select(l => (l.Key.Value.Value, l.Value.Value.Value)));
        Assert.Equal("front.csv", levels[0].Key.At.File.Name);
        Assert.StartsWith("63", levels[0].Key.At.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("63, -3 dB\n", "spec/unit", 1, 1)]
    [InlineData("Hz,dB\n63,-3\n1000,loud\n", "spec/unit", 3, 6)]
    [InlineData("63 Hz\n", "spec/file", 1, 1)]
    public void A_slip_in_the_file_is_told_with_its_place_there(string text, string rule, int line, int column)
    {
        var finding = Compiler.Compile(Example.File(Spec), new FilesInMemory(("front.csv", text))).Findings
            .First(f => f.At.File.Name == "front.csv");
        Assert.Equal((rule, line, column), (finding.Rule, finding.At.Line, finding.At.Column));
    }

    [Fact]
    public void A_file_that_is_not_there_and_one_without_levels_are_told_at_the_name()
    {
        foreach (var files in new[] { FilesInMemory.None, new FilesInMemory(("front.csv", "Hz,dB\n")) })
        {
            var finding = Assert.Single(Compiler.Compile(Example.File(Spec), files).Findings, f => f.Rule == "spec/file");
            Assert.Equal("front.csv", finding.At.Words);
        }
    }
}
