namespace WireSketch.Tests.Documents.HandOver;

/// <summary>What the customer and the next technician are given.</summary>
public sealed class HandOverPaperTests
{
    private const string Runs = """
        P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 17 ft, fuse: { rating: 60 A, at: 12 in }, through: firewall grommet, protect: loom, notes: lies under the left sill plate }
        G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 14 in }
        R1: { from: plug, to: amp.remote, wire: 18 AWG blue, length: 10 ft }
        S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
        """;

    private static string Paper(string paper, string change = "", string to = "")
    {
        var result = Compiler.Compile(new("a.wsk.yaml", """
            wiresketch: 1
            job: { title: A job, currency: EUR, notes: owner tows a trailer }
            gear:
              battery: { is: battery, zone: engine bay, place: right of the engine, origin: factory, capacity: 60 Ah }
              solar: { is: general source, zone: roof, current: 5 A }
              plug: { is: tap point, zone: dash, origin: factory, carries: accessory, color: violet/yellow, connector: C2, cavity: "7", limit: 1 A }
              amp:
                is: amplifier
                zone: cabin
                labor: 90 min
                photo: amp.jpg
                notes: screws are M5
                supply: { fuse: 40 A }
                wakes-on: remote
                channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } }
                settings: { wake: remote, delay: 2.5 ms, polarity: reversed }
              sub: { is: subwoofer, zone: rear, coils: 2 x 4 ohm, dc-resistance: 3.4 ohm, handles: 400 W, labor: 0.5 h }
              knob: { is: level control, to: amp }
              bolt: { is: chassis point, zone: cabin, surface: bare metal }
            zones: { engine bay: {}, dash: {}, cabin: {}, rear: {}, roof: {} }
            runs:
            """.Replace(change.Length == 0 ? "\0" : change, to, StringComparison.Ordinal)
            + "\n"
            + Runs.ReplaceLineEndings("\n  ").Insert(0, "  ")
            + """

              P2: { from: solar.+, to: battery.+, wire: 14 AWG red, length: 8 ft, fuse: { rating: 10 A, at: 7 ft } }
              G2: { from: solar.-, to: battery.-, wire: 14 AWG black, length: 8 ft }
            """), WireSketch.Testing.FilesInMemory.None);
        return Built.From(result).Text(paper);
    }

    [Fact]
    public void It_says_how_to_take_everything_off_the_supply()
    {
        var text = Paper("handover.md");
        Assert.Contains("1. Switch everything off", text, StringComparison.Ordinal);
        Assert.Contains(
            "solar (roof) gives current of its own: switch it off or cover it, then take out P2.fuse.",
            text,
            StringComparison.Ordinal);
        Assert.Contains("Take the negative terminal off battery (engine bay, right of the engine).", text, StringComparison.Ordinal);
    }

    [Fact]
    public void It_tells_the_next_technician_where_the_vehicle_was_touched_and_what_was_noted()
    {
        var text = Paper("handover.md");
        Assert.Contains("| Plug | dash | violet/yellow | C2, cavity 7 | accessory, 1 A at most |", text, StringComparison.Ordinal);
        Assert.Contains("- Amp (cabin): screws are M5; photo amp.jpg", text, StringComparison.Ordinal);
        Assert.Contains("- P1: lies under the left sill plate", text, StringComparison.Ordinal);
        Assert.Contains("- owner tows a trailer", text, StringComparison.Ordinal);
        Assert.Contains("plugs into amp", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_fuse_feeds_something_or_says_that_it_does_not()
    {
        foreach (var name in WireSketch.Testing.ShippedSpecs.Good)
        {
            var rows = Built.Shipped(Path.GetFileName(name)[..^".wsk.yaml".Length])
                .Text("handover.md")
                .Split("## Where the fuses are")[1]
                .Split("\n## ")[0]
                .Split('\n')
                .Where(l => l.StartsWith('|'))
                .Skip(2)
                .ToArray();
            Assert.NotEmpty(rows);
            Assert.All(rows, r => Assert.All(r.Trim('|').Split('|'), cell => Assert.NotEqual("", cell.Trim())));
        }
    }

    // 3.4 ohm twice in parallel are 1.7 ohm (Ohm's law); the wires of S1, 9 ft of 12 AWG both ways, add some 31 mohm.
    [Fact]
    public void The_meter_is_told_what_it_will_show()
    {
        var text = Paper("setup.md");
        Assert.Contains("| Ohms at amp.sub, speakers on, amplifier off | 1.73 ohm |", text, StringComparison.Ordinal);
        Assert.Contains("polarity: reversed; delay: 2.5 ms", text, StringComparison.Ordinal);
        Assert.Contains("| amp | remote | plug | no |", text, StringComparison.Ordinal);
        Assert.Contains("about three quarters", Paper("setup.md", "dc-resistance: 3.4 ohm, ", ""), StringComparison.Ordinal);
    }

    [Fact]
    public void Labor_is_summed_in_the_parts_list()
    {
        var text = Paper("parts.md");
        Assert.Contains("| 1.5 h | fitting: amplifier, 1 channel | amp |", text, StringComparison.Ordinal);
        Assert.Contains("The labor that is stated comes to 2 h.", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("camper")]
    [InlineData("work-van")]
    public void A_job_without_sound_has_no_words_about_sound(string spec)
    {
        var built = Built.Shipped(spec);
        Assert.DoesNotContain("music", built.Text("handover.md"), StringComparison.Ordinal);
        Assert.DoesNotContain("## Gain", built.Text("setup.md"), StringComparison.Ordinal);
        Assert.DoesNotContain("Source on", built.Text("setup.md"), StringComparison.Ordinal);
    }

    /// <summary>Filters that stand in the processor are the channel's filters; the tone of a tweeter lies within its band.</summary>
    [Fact]
    public void Filters_of_the_processor_are_told_at_the_channel()
    {
        var text = Built.Shipped("active-front").Text("setup.md");
        Assert.Contains("| front-amp.fl | 4.07 ohm | 2500 Hz at processor |", text, StringComparison.Ordinal);
        Assert.Contains("| front-amp.fl | 5000 Hz |", text, StringComparison.Ordinal);
        Assert.DoesNotContain("it must have one", text, StringComparison.Ordinal);
    }

    /// <summary>
    /// A channel that is cut above 350 Hz never reaches its volts with a tone of 1 kHz: the middle between its corners, √(70·350) = 157
    /// Hz.
    /// </summary>
    [Fact]
    public void A_tone_lies_within_the_band_of_its_channel()
    {
        Assert.Contains("| amp-bass.left | 160 Hz |", Built.Shipped("competition").Text("setup.md"), StringComparison.Ordinal);
        Assert.Contains("| front-amp.rl | 1000 Hz |", Built.Shipped("active-front").Text("setup.md"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("parts.md")]
    [InlineData("cuts.md")]
    [InlineData("report.md")]
    [InlineData("setup.md")]
    [InlineData("findings.md")]
    public void Every_paper_for_the_shop_has_its_cautions(string paper)
    {
        var text = Paper(paper);
        foreach (var word in new[]
        {
            "negative terminal", "the fuse last", "Look behind a panel before drilling", "airbags", "fuel and brake lines",
            "eye protection", "vehicle maker's instructions"
        })
        {
            Assert.Contains(word, text, StringComparison.OrdinalIgnoreCase);
        }
    }
}
