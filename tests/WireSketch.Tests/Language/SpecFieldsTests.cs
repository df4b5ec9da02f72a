using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

/// <summary>What is said about single keys and values. Each case: the words, then line:column of each finding with its rule.</summary>
public sealed class SpecFieldsTests
{
    [Theory]
    // Units.
    [InlineData("gear: { a: { is: fuse, rating: 60 } }", "spec/unit 60", "A")]
    [InlineData("gear: { a: { is: fuse, rating: 60 V } }", "spec/unit 60 V", "mA or A")]
    [InlineData("gear: { a: { is: fuse, rating: 60 a } }", "spec/unit 60 a", "A")]
    [InlineData("gear: { a: { is: fuse, rating: many } }", "spec/value many", "number with its unit")]
    [InlineData("gear: { a: { is: fuse, rating: 60 A A } }", "spec/unit 60 A A", "A")]
    [InlineData("gear: { a: { is: fuse, rating: 1e3 A } }", "spec/unit 1e3 A", "A")]
    [InlineData("gear: { a: { is: fuse, rating: 1,5 A } }", "spec/syntax 1,5 A", "behind a point")]
    [InlineData("gear: { a: { is: distribution block, fits: 8 to 4 } }", "spec/unit 8 to 4", "AWG or mm2")]
    [InlineData("gear: { a: { is: subwoofer, coils: 2 x 4 } }", "spec/unit 2 x 4", "ohm")]
    [InlineData("gear: { a: { is: subwoofer, coils: 99 x 4 ohm } }", "spec/value 99 x 4 ohm", "1 to 64")]
    [InlineData("gear: { a: { is: relay, coil: 12 V } }", "spec/value 12 V", "neither a current nor a resistance")]
    [InlineData("readings: [{ at: a.+, reads: 12.3 }]", "spec/unit 12.3", "V")]
    // Values that make no sense.
    [InlineData("gear: { a: { is: fuse, rating: -5 A } }", "spec/value -5 A", "less than nothing")]
    [InlineData("gear: { a: { is: fuse, rating: 0 A } }", "spec/value 0 A", "zero")]
    [InlineData("gear: { a: { is: lamp, power: 5 W, duty: 120 % } }", "spec/value 120 %", "more than all")]
    [InlineData("zones: { a: { ambient: -300 C } }", "spec/value -300 C", "colder")]
    [InlineData("gear: { a: { is: passive crossover, outputs: { b: { band: 900 Hz to 80 Hz } } } "
        + "}", "spec/value 900 Hz to 80 Hz", "downwards")]
    [InlineData("gear: { a: { is: connector, cavities: 0 } }", "spec/value 0", "from 1 to 1000")]
    [InlineData("gear: { a: { is: connector, cavities: 2000000000 } }", "spec/value 2000000000", "from 1 to 1000")]
    [InlineData("gear: { a: { is: connector, cavities: 2.5 } }", "spec/value 2.5", "whole number")]
    [InlineData("gear: { a: { is: fuse, price: $12 } }", "spec/value $12", "plain number")]
    [InlineData("gear: { a: { is: fuse, price: -12 } }", "spec/value -12", "less than nothing")]
    [InlineData("gear: { a: { is: fuse block, fuses: { 1: 5 A, 9: 5 A }, outputs: 4 } }", "spec/value 9", "4 outputs")]
    [InlineData("gear: { a: { is: fuse block, fuses: { one: 5 A } } }", "spec/value one", "1 to 1000")]
    [InlineData("gear: { a: { is: lamp, power: 5 W, current: 1 A } }", "spec/value current", "power and current")]
    [InlineData("runs: { P1: { from: a, to: b, fuse: 5 A, breaker: 5 A } }", "spec/value breaker", "fuse and breaker")]
    // Words.
    [InlineData("gear: { a: { is: battery, chemistry: agm } }", "spec/value agm", "AGM")]
    [InlineData("gear: { a: { is: chassis point, surface: bare-metal } }", "spec/value bare-metal", "bare metal")]
    [InlineData("gear: { a: { is: amplifer, channels: { b: {} } } }", "spec/unknown-kind amplifer", "amplifer")]
    [InlineData("runs: { P1: { from: a, to: b, wire: 4 AWG rde } }", "spec/value 4 AWG rde", "neither a color")]
    // Booleans.
    [InlineData("gear: { a: { is: lamp, power: 5 W, always-live: yes } }", "spec/value yes", "true or false")]
    [InlineData("gear: { a: { is: lamp, power: 5 W, always-live: on } }", "spec/value on", "true or false")]
    [InlineData("gear: { a: { is: lamp, power: 5 W, always-live: True } }", "spec/value True", "true or false")]
    [InlineData("gear: { a: { is: lamp, power: 5 W, always-live: \"true\" } }", "spec/value \"true\"", "true or false")]
    // Forms.
    [InlineData("gear: [a]", "spec/type [a]", "a map of keys with values")]
    [InlineData("gear: lamp", "spec/type lamp", "a map of keys with values")]
    [InlineData("gear: { a: lamp }", "spec/type lamp", "a map of keys with values")]
    [InlineData("gear: { a: { is: [lamp], power: 5 W } }", "spec/type [lamp]", "this is a list")]
    [InlineData("readings: { at: a }", "spec/type { at: a }", "a list")]
    [InlineData("readings: [at]", "spec/type at", "keys with values")]
    [InlineData("runs: { P1: { from: { a: b }, to: c } }", "spec/type { a: b }", "a list of them")]
    [InlineData("runs: { P1: { from: [[a], b], to: c } }", "spec/type [a]", "list of texts")]
    [InlineData("runs: { P1: { from: a, to: b, wire: { size: 4 AWG } } }", "spec/type { size: 4 AWG }", "a single value")]
    // Nothing there.
    [InlineData("gear:", "spec/value gear", "has no value")]
    [InlineData("gear: { a: }", "spec/value a", "has no value")]
    [InlineData("gear: { a: { is: fuse, zone: } }", "spec/value zone", "has no value")]
    [InlineData("gear: { a: { is: fuse, zone: ~ } }", "spec/value zone", "has no value")]
    [InlineData("job: { title: \"\" }", "spec/value title", "has no value")]
    [InlineData("runs: { P1: { from: [], to: c } }", "spec/value from", "has no value")]
    // Keys.
    [InlineData("gear: { a: { is: fuse, capacity: 5 Ah } }", "spec/unknown-key capacity", "a fuse has no key")]
    [InlineData("ruins: {}", "spec/unknown-key ruins", "a spec has no key")]
    [InlineData("gear: { a: { iz: fuse } }", "spec/unknown-key iz", "iz")]
    [InlineData("runs: { P1: { form: a, to: c } }", "spec/unknown-key form", "form")]
    [InlineData("runs: { P1: { b: 1, c: 2, d: 3, e: 4, from: a, to: b } }", "spec/unknown-key b", "none of 3 other keys")]
    [InlineData("gear: { a: { is: amplifier, channels: { b: { power: { 4 ohm: 5 W, 4 Ω: 6 W } } } } "
        + "}", "spec/duplicate-key 4 Ω", "says the same")]
    // Missing.
    [InlineData("gear: { a: { zone: dash } }", "spec/missing a", "a has no is")]
    [InlineData("gear: { a: { is: lamp } }", "spec/missing a", "power or current or resistance")]
    [InlineData("runs: { P1: { to: c } }", "spec/missing P1", "P1 has no from")]
    [InlineData("accept: [{ rule: a/b, at: c }]", "spec/missing accept", "because")]
    [InlineData("wires: { a: { material: copper } }", "spec/missing a", "a has no size")]
    // Names.
    [InlineData("gear: { a.b: { is: fuse } }", "spec/id a.b", "dot")]
    [InlineData("gear: { a b: { is: fuse } }", "spec/id a b", "blank")]
    [InlineData("gear: { +: { is: fuse } }", "spec/id +", "begin with a letter")]
    [InlineData("gear: { a: { is: fuse } }\nruns: { a: { from: b, to: c } }", "spec/id a", "a device and a run")]
    [InlineData("gear: { a: { is: amplifier, channels: { in: {} } } }", "spec/id in", "two terminals called \"in\"")]
    [InlineData("gear: { a: { is: fuse, zone: cabn } }", "spec/reference cabn", "no zone called")]
    [InlineData("gear: { a: { part: b } }", "spec/reference b", "no part called")]
    [InlineData("runs: { P1: { from: b, to: c, along: sill } }", "spec/reference sill", "no path called")]
    [InlineData("runs: { P1: { from: b, to: c, wire: thick } }", "spec/reference thick", "no wire type called")]
    [InlineData("gear: { a: { is: level control, to: amp } }", "spec/reference amp", "no device called")]
    [InlineData("gear: { a: { is: amplifier, channels: { b: { bridges-with: c } } } }", "spec/reference c", "channel of a")]
    public void A_slip_gives_its_finding_and_no_other(string words, string found, string says)
    {
        var findings = Findings(words);

        Assert.Equal(found, string.Join('|', findings.Select(f => $"{f.Rule} {f.At.Words}")));
        Assert.All(says.Split('|').Zip(findings), p => Assert.Contains(p.First, p.Second.Message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("gear: { a: { is: fuse, ratng: 60 A } }", "rating")]
    [InlineData("gear: { a: { is: fuse, rating: 60 a } }", "60 A")]
    [InlineData("gear: { a: { is: lamp, power: 5 W, always-live: yes } }", "true")]
    [InlineData("gear: { a: { is: battery, chemistry: agm } }", "AGM")]
    [InlineData("gear: { a: { is: subwofer } }", "subwoofer")]
    [InlineData("gear: { a: { is: fuse, zone: cabn } }", "cabin")]
    [InlineData("gear: { a: { is: fuse, collor: red } }\nparts: {}", null)]
    [InlineData("ruins: { P1: { from: a, to: b } }", "runs")]
    public void The_nearest_word_is_offered_as_a_fix_that_mends_it(string words, string? better)
    {
        var text = Example.Whole(words);
        var finding = Assert.Single(SpecReader.Read(new SourceFile("a", text), FilesInMemory.None).Findings);

        if (better is null)
        {
            Assert.Empty(finding.Fixes);
            return;
        }

        var edit = Assert.Single(finding.Fixes[0].Edits);
        Assert.Equal(better, edit.Words);
        Assert.Empty(
            SpecReader.Read(
                new SourceFile("a", text.Remove(edit.At.Start, edit.At.Length).Insert(edit.At.Start, edit.Words)),
                FilesInMemory.None).Findings);
    }

    [Theory]
    [InlineData("gear: { a: { is: fuse, rating: 60A } }")]
    [InlineData("gear: { a: { is: fuse, rating: \"60 A\" } }")]
    [InlineData("gear: { a: { is: subwoofer, coils: 2x4ohm } }")]
    [InlineData("gear: { a: { is: subwoofer, coils: 2 × 4 Ω } }")]
    [InlineData("gear: { a: { is: distribution block, fits: 8 to 1/0 AWG } }")]
    [InlineData("gear: { a: { is: distribution block, fits: 6 mm2 to 21 mm² } }")]
    [InlineData("gear: { a: { is: passive crossover, outputs: { b: { band: 80 to 2500 Hz } } } }")]
    [InlineData("gear: { a: { is: amplifier, input: { line: 0 V to 5 V }, channels: { b: {} } } }")]
    [InlineData("gear: { a: { is: general load, power: 5 W, standby: 0 mA } }")]
    [InlineData("gear: { a: { is: fuse, price: 12.50, labor: 30 min, quantity: 0 } }")]
    [InlineData("job: { title: t, date: 2026-10-30, reference: 0412, notes: yes }")]
    [InlineData("zones: { roof rack: { exposed: true, ambient: 95 F } }\ngear: { a: { is: fuse, zone: roof rack } }")]
    [InlineData("runs: { P1: { from: [a.+, b.+], to: c, wire: 2 x 14 AWG, fuse: auto, hookup: { coils: series } } }")]
    [InlineData("response: [{ at: a, volume: 20, levels: { 63 Hz: -3 dB, 80 Hz: 0 dB } }]")]
    [InlineData("settings: { slack: 6 in, drop: { critical: 2 % }, paper: A4 }")]
    [InlineData("gear: { a: { is: amplifier, channels: { b: { settings: { boost: 6 dB at 45 Hz, delay: 0 ms } } } } }")]
    public void What_is_right_gives_no_finding(string words) => Assert.Empty(Findings(words).Select(f => f.Message));

    private static IEnumerable<Finding> Findings(string words) =>
        SpecReader.Read(new SourceFile("a", Example.Whole(words)), FilesInMemory.None).Findings;
}
