using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

public sealed class SpecReaderTests
{
    [Fact]
    public void The_small_example_reads_without_a_finding()
    {
        var (spec, findings) = SpecReader.Read(new SourceFile("bass.wsk.yaml", Examples.BassUpgrade), FilesInMemory.None);

        Assert.Empty(findings.Select(f => $"{f.At} {f.Message}"));
        Assert.Equal(["battery", "radio", "adapter", "amp", "sub", "seat-bolt"], spec.Gear.Select(g => g.Id));
        Assert.Equal(["P1", "G1", "T1", "L1", "S1"], spec.Runs.Select(r => r.Id));
        Assert.Equal(["engine bay", "dash", "cabin", "rear"], spec.Zones.Select(z => z.Id));
        Assert.Equal(new Amps(90), spec.Job.Vehicle.Alternator?.Value);
        var amp = Assert.IsType<Amplifier>(spec.Gear[3]);
        Assert.Equal(new Range<Volts>(new(0.1), new(5)), amp.InputLine?.Value);
        Assert.Equal([(4.0, 250.0), (2.0, 400.0)], amp.Channels[0].Power.Select(p => (p.Key.Value.Value, p.Value.Value.Value)));
        Assert.Equal(new Multiple<Ohms>(2, new(4)), Assert.IsType<Speaker>(spec.Gear[4]).Coils?.Value);
        Assert.Equal(Metres.FromInches(12), spec.Runs[0].Protection?.Distance?.Value);
        Assert.Equal(4, spec.Runs[0].Wire?.Size?.Awg);
        Assert.Equal(["red"], spec.Runs[0].Wire!.Colours);
    }
}
