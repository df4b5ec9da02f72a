using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Testing;
using WireSketch.Text;
using WireSketch.Topology;

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
        Assert.Equal(new Meters(0.3048), spec.Runs[0].Protection?.Distance?.Value);
        Assert.Equal(4, spec.Runs[0].Wire?.Size?.Awg);
        Assert.Equal(["red"], spec.Runs[0].Wire!.Colors);
    }

    [Theory]
    [MemberData(nameof(Shipped))]
    public void Every_shipped_spec_reads_without_a_finding(string path)
    {
        var parts = new SourceFile("parts/shop-parts.yaml", Repository.Read("specs/parts/shop-parts.yaml"));
        var (spec, findings) = SpecReader.Read(
            new SourceFile(path, Repository.Read("specs/" + path)),
            new FilesInMemory((parts.Name, parts.Text)));

        Assert.Empty(findings.Select(f => $"{f.At} {f.Message}"));
        Assert.NotEmpty(spec.Gear);
        Assert.NotEmpty(spec.Runs);
    }

    public static TheoryData<string> Shipped() =>
        [
            .. Directory.EnumerateFiles(Path.Combine(Repository.Root, "specs"), "*.wsk.yaml")
                .Select(p => Path.GetFileName(p))
                .Order(StringComparer.Ordinal)
        ];

    [Fact]
    public void Gear_takes_over_its_part_and_overrides_it_key_by_key()
    {
        var (spec, findings) = Read("""
            parts:
              amp-4:
                is: amplifier
                make: Sample Audio
                supply: { fuse: 50 A, efficiency: 80 % }
                channels:
                  fl: { power: { 4 ohm: 75 W, 2 ohm: 110 W }, minimum: 2 ohm }
                  fr: { power: { 4 ohm: 75 W }, minimum: 2 ohm }
            gear:
              amp:
                part: amp-4
                zone: rear
                supply: { efficiency: 70 % }
                channels:
                  fr: { power: { 4 Ω: 60 W }, settings: { low-pass: 80 Hz } }
                  sub: { power: { 4 ohm: 200 W } }
            """);

        Assert.Empty(findings.Select(f => f.Message));
        var amp = Assert.IsType<Amplifier>(Assert.Single(spec.Gear));
        Assert.Equal(("amp", "amp-4", "Sample Audio", "rear"), (amp.Id, amp.Facts.Part?.Value, amp.Facts.Make?.Value, amp.Zone));
        Assert.Equal((50, 0.7), (amp.Supply.Fuse?.Value.Value, amp.Supply.Efficiency?.Value.Value));
        Assert.Equal(["fl", "fr", "sub"], amp.Channels.Select(c => c.Name.Value));
        Assert.Equal([75.0, 110, 60, 200], amp.Channels.SelectMany(c => c.Power).Select(p => p.Value.Value.Value));
        Assert.Equal((2, 80), (amp.Channels[1].Minimum?.Value.Value, amp.Channels[1].Settings.LowPass?.Value.Value));
    }

    [Fact]
    public void A_slip_in_a_part_is_reported_once_however_many_use_it()
    {
        var (_, findings) = Read("parts: { l: { is: lamp, power: 5 } }\ngear: { a: { part: l }, b: { part: l }, c: { part: l } }");

        Assert.Equal("spec/unit", Assert.Single(findings).Rule);
    }

    [Theory]
    [InlineData("parts: { l: { is: lamp, pwer: 5 W } }", "spec/unknown-key pwer")]
    [InlineData("parts: { l: { pwer: 5 W } }", "spec/unknown-key pwer")]
    [InlineData("parts: { l: { is: lmp } }", "spec/unknown-kind lmp")]
    [InlineData("parts: { l: { power: 5 W, capacity: 60 Ah, coils: 4 ohm } }", "")]
    [InlineData("parts: { l: { is: lamp } }", "")]
    public void A_part_that_nothing_uses_is_checked_all_the_same(string words, string found) =>
        Assert.Equal(found, string.Join('|', Read(words).Findings.Select(f => $"{f.Rule} {f.At.Words}")));

    [Fact]
    public void The_kind_may_stand_in_the_part_alone_and_must_not_contradict_it()
    {
        Assert.Equal(
            "spec/value",
            Assert.Single(Read("parts: { l: { is: lamp, power: 5 W } }\ngear: { a: { part: l, is: pump } }").Findings).Rule);
        Assert.Empty(Read("parts: { l: { is: lamp, power: 5 W } }\ngear: { a: { part: l, is: lamp } }").Findings);
    }

    [Fact]
    public void A_part_may_build_on_another_but_not_on_itself()
    {
        var (spec, findings) = Read("parts: { l: { is: lamp, power: 5 W }, m: { part: l, power: 7 W } }\ngear: { a: { part: m } }");
        Assert.Empty(findings);
        Assert.Equal(7, Assert.IsType<Load>(Assert.Single(spec.Gear)).Power?.Value.Value);

        Assert.Contains(
            "described by itself",
            Assert.Single(
                Read("parts: { l: { part: m }, m: { part: l, is: lamp, power: 5 W } }\ngear: { a: { part: m } }").Findings).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Used_files_bring_parts_wires_and_zones()
    {
        var files = new FilesInMemory(
            (
                "shop.yaml",
                "wiresketch: 1\nparts: { l: { is: lamp, power: 5 W } }\nwires: { thin: { size: 18 AWG } }\nzones: { roof: { ambient: 70 "
                    + "C } }\n"));
        var (spec, findings) = Read(
            "use: shop.yaml\ngear: { a: { part: l, zone: roof } }\nruns: { P1: { from: a.+, to: a.-, wire: thin } }",
            files);

        Assert.Empty(findings.Select(f => f.Message));
        Assert.Equal("shop.yaml", Assert.Single(spec.Used).Name);
        Assert.Equal(
            (70, "thin", "l"),
            (Assert.Single(spec.Zones).Ambient?.Value.Value, Assert.Single(spec.Wires).Id, Assert.Single(spec.Parts).Value));
        Assert.Equal("shop.yaml", Assert.IsType<Load>(Assert.Single(spec.Gear)).Power?.At.File.Name);
    }

    [Theory]
    [InlineData("use: none.yaml", "spec/use none.yaml", "no such file")]
    [InlineData("use: a.wsk.yaml", "spec/use a.wsk.yaml", "uses itself")]
    [InlineData("use: [shop.yaml, shop.yaml]", "spec/use shop.yaml", "named twice")]
    [InlineData("use: jobs.yaml", "spec/use gear", "may hold parts, wires and zones")]
    [InlineData("use: chain.yaml", "spec/use use", "may hold parts, wires and zones")]
    [InlineData("use: future.yaml", "spec/version 2", "version 2")]
    [InlineData("use: bare.yaml", "spec/version parts", "which version")]
    [InlineData("use: slip.yaml", "spec/unknown-key pwer", "pwer")]
    [InlineData("use: broken.yaml", "spec/syntax [", "never closed")]
    [InlineData("use: shop.yaml\nparts: { l: { is: lamp } }", "spec/id l", "described twice")]
    [InlineData("use: shop.yaml\nwires: { thin: { size: 4 AWG } }", "spec/id thin", "described twice")]
    public void A_slip_with_used_files_is_found_in_the_file_where_it_is(string words, string found, string says)
    {
        var files = new FilesInMemory(
            ("shop.yaml", "wiresketch: 1\nparts: { l: { is: lamp, power: 5 W } }\nwires: { thin: { size: 18 AWG } }\n"),
            ("a.wsk.yaml", ""),
            ("jobs.yaml", "wiresketch: 1\ngear: { a: { is: lamp, power: 5 W } }\n"),
            ("chain.yaml", "wiresketch: 1\nuse: shop.yaml\n"),
            ("future.yaml", "wiresketch: 2\nparts: {}\n"),
            ("bare.yaml", "parts: { l: { is: lamp } }\n"),
            ("slip.yaml", "wiresketch: 1\nparts: { l: { is: lamp, pwer: 5 W } }\n"),
            ("broken.yaml", "wiresketch: 1\nparts:\n  l: [\n"));

        var finding = Assert.Single(Read(words, files).Findings);

        Assert.Equal(found, $"{finding.Rule} {finding.At.Words}");
        Assert.Contains(says, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wiresketch: 2\ngear: 5\n", "spec/version 2")]
    [InlineData("wiresketch: one\ngear: 5\n", "spec/version one")]
    [InlineData("wiresketch:\ngear: 5\n", "spec/version wiresketch")]
    [InlineData("job: { title: t }\nwiresketch: 1\n", "spec/version wiresketch")]
    [InlineData("job: { title: t }\n", "spec/version job")]
    [InlineData("wiresketch: 1\n", "spec/missing wiresketch: 1")]
    [InlineData("wiresketch: 1\njob: { shop: s }\n", "spec/missing job")]
    [InlineData("", "spec/version ")]
    public void A_spec_begins_with_its_version_and_has_a_title(string text, string found) =>
        Assert.Equal(
            found,
            string.Join(
                '|',
                SpecReader.Read(new SourceFile("a", text), FilesInMemory.None).Findings.Select(f => $"{f.Rule} {f.At.Words}")));

    [Fact]
    public void A_file_of_parts_alone_needs_no_job_and_is_told_apart()
    {
        var file = new SourceFile("parts.yaml", "wiresketch: 1\nparts: { l: { is: lamp, power: 5 W } }\n");
        var (spec, findings) = SpecReader.Read(file, FilesInMemory.None);

        Assert.Empty(findings);
        Assert.True(spec.OnlyShared);
        Assert.True(SpecReader.IsShared(file));
        Assert.False(SpecReader.IsShared(new SourceFile("a", Examples.BassUpgrade)));
    }

    [Fact]
    public void What_could_not_be_read_is_named_so_that_nothing_calls_it_missing()
    {
        Assert.Equal(["a"], Read("gear: { a: { is: lmp }, b: { is: lamp, power: 5 W } }").Value.Unread);
        Assert.Equal(["P1"], Read("runs: { P1: 5 }").Value.Unread);
        Assert.True(Read("gear:\n  a: [\n").Value.Broken);
        Assert.False(Read("gear: { a: { is: fuse, rating: 5 } }").Value.Broken);
    }

    [Fact]
    public void While_part_of_the_text_cannot_be_read_nothing_is_called_missing()
    {
        var findings = Read("parts:\n  l: [\nzones:\n  roof: {\ngear:\n  a: { part: l, zone: roof }\n").Findings;

        Assert.Equal(["spec/syntax", "spec/syntax"], findings.Select(f => f.Rule));
    }

    [Theory]
    [InlineData("    is: amplifier", "    is: [amplifier")]
    [InlineData("  battery: { is: battery,", "  battery: { is: battery")]
    [InlineData("gear:\n", "gaer:\n")]
    [InlineData("is: subwoofer", "is: subwofer")]
    [InlineData("4 AWG red", "thick")]
    public void One_slip_gives_one_finding_when_the_runs_are_wired_as_well(string words, string slip)
    {
        var text = Examples.BassUpgrade.Replace(words.TrimStart('\n'), slip, StringComparison.Ordinal);
        Assert.NotEqual(Examples.BassUpgrade, text);

        var findings =
            SpecReader.Read(new SourceFile("a", text), FilesInMemory.None).Then(s => WiringResolver.Resolve(s, SizeChoices.None)).Findings;

        Assert.Single(findings.Select(f => $"{f.At} {f.Message}"));
    }

    [Fact]
    public void A_finding_about_a_device_or_run_names_it()
    {
        Assert.Equal(["a"], Assert.Single(Read("gear: { a: { is: amplifier, channels: { b: { minimum: 2 } } } }").Findings).Subjects);
        Assert.Equal(["P1"], Assert.Single(Read("runs: { P1: { from: a, to: b, fuse: { rating: 5 } } }").Findings).Subjects);
    }

    /// <summary>Every kind of gear can be written, and its terminals have names of their own.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_can_be_written(string kind)
    {
        var more = kind switch
        {
            "lamp" or "motor" or "pump" or "fridge" or "inverter" or "general load" => "power: 5 W",
            "fuse block" => "outputs: 2",
            "amplifier" => "channels: { b: {} }",
            "passive crossover" => "outputs: { b: {} }",
            "load resistor" => "resistance: 60 ohm",
            "level control" => "to: a",
            _ => "notes: none",
        };
        var (spec, findings) = Read($"gear: {{ a: {{ is: {kind}, {more} }} }}");

        Assert.Empty(findings.Select(f => f.Message));
        var gear = Assert.Single(spec.Gear);
        Assert.Equal(kind, gear.Kind);
        Assert.Equal(gear.Terminals.Length, gear.Terminals.Select(t => t.Name).Distinct().Count());
    }

    public static TheoryData<string> Kinds() => [.. GearKinds.All.Select(k => k.Word)];

    private static Outcome<Spec> Read(string words, FilesInMemory? files = null) =>
        SpecReader.Read(new SourceFile("a.wsk.yaml", Example.Whole(words)), files ?? FilesInMemory.None);
}
