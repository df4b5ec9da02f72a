using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language.Kinds;
using WireSketch.Papers.Formats;
using WireSketch.Quantities;
using WireSketch.Rules;

namespace WireSketch.Papers.SettingUp;

/// <summary>The sheet for first power-up, for setting gains and filters, and for writing down what was measured.</summary>
internal static class SetupPaper
{
    private static readonly ImmutableArray<Decibels> Recorded = [new(0), new(-5), new(-10)];

    public static Paper Write(PaperHead head)
    {
        var channels = ChannelSetup.From(head.Install);
        return head.Begin("Set-up")
            .Heading(2, "Cautions").List(Cautions.ForTechnicians)
            .Heading(2, "Before power").List(BeforePower, boxes: true)
            .Heading(2, "First power").Steps(FirstPower)
            .Heading(2, "Filters").Paragraph("Where the spec names a setting it is taken; the others are where to begin (common practice, no published source).").Table(Filters(channels))
            .Heading(2, "Gain").Steps(Gain).Table(Targets(channels))
            .Heading(2, "Time and phase").Steps(TimeAndPhase)
            .Heading(2, "Measured").Paragraph("Computed values hold at full output, engine running, unless it says otherwise. What differs by more than the meter's tolerance has a cause: find it.").Table(Readings(head.Install))
            .ToPaper("setup.md");
    }

    private static readonly ImmutableArray<string> BeforePower =
    [
        "Main fuse out, battery's negative off.",
        "Every supply wire against the body: no continuity.",
        "Every ground against the battery's negative post: under 0.5 ohm with the leads' own resistance taken off (common practice).",
        "Every speaker pair at the amplifier: the resistance of its coils, and nothing to the body.",
        "Gains lowest, boosts and equalisers off, filters as below, source at zero.",
    ];

    private static readonly ImmutableArray<string> FirstPower =
    [
        "Connect the battery's negative, then fit the main fuse. A small spark is a capacitor charging; a large one is a fault: stop.",
        "Without the source on: measure the current at rest. It must fall to the computed value within minutes.",
        "Source on: every device wakes. Source off: every device sleeps again.",
        "Play something quietly on one channel at a time: left is left, front is front.",
    ];

    private static readonly ImmutableArray<string> Gain =
    [
        "Speakers off the channel, or the volume where nothing can be harmed. Equalisers, boost and loudness off.",
        "Source at the highest volume at which it does not clip; if you cannot see that on an oscilloscope, three quarters of its range (common practice).",
        "Play the tone. Mind the level at which it was recorded: the table gives the volts for three.",
        "Raise the gain until a true-rms meter at the output shows the target; an oscilloscope must still show a clean wave. Stop at whichever comes first.",
        "Write down what you reached, and mark the dial.",
    ];

    private static readonly ImmutableArray<string> TimeAndPhase =
    [
        "Polarity first: a battery pulse or a polarity tone, every driver the same way.",
        "Measure the distance of every driver to the listener's ears; delay the near ones by the difference over 343 m/s (20 C).",
        "Then at the hand-over frequency, one pair at a time: turn the polarity of the subwoofer and keep the louder setting.",
        "Levels last, by ear or by a meter, from the front to the rear.",
    ];

    private static PlainTable Filters(ImmutableArray<ChannelSetup> channels) => new(
        [new("Channel"), new("Load", true), new("High-pass"), new("Low-pass"), new("Subsonic"), new("Remarks")],
        [.. channels.Select(c => ImmutableArray.Create(c.Channel, $"{c.Load}", c.HighPass, c.LowPass, c.Subsonic, string.Join("; ", c.Remarks)))]);

    private static PlainTable Targets(ImmutableArray<ChannelSetup> channels) => new(
        [new("Channel"), new("Tone", true), .. Recorded.Select(r => new Column($"Tone recorded at {r}", true)), new("Reached")],
        [
            .. channels.Select(c => ImmutableArray.CreateRange(
                [c.Channel, $"{c.Tone}", .. Recorded.Select(r => c.TargetFor(r) is { } v ? $"{v}" : "unknown"), ""])),
        ]);

    private static PlainTable Readings(Install install)
    {
        var answers = install.Answers;
        var full = answers.State(SystemState.FullOutput);
        var rows = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        foreach (var source in full.Sources.Where(s => !s.Id.StartsWith('(')))
        {
            rows.Add([$"Volts across {source.Id}", $"{source.Volts}", ""]);
        }

        foreach (var load in full.Loads.Where(l => l.Amps.Value > 0 && !l.Path.IsTakenAsWired))
        {
            rows.Add([$"Volts at {load.Path.Gear.Id}", $"{load.Between}", ""]);
            rows.Add([$"Amps into {load.Path.Gear.Id}", $"{load.Amps}", ""]);
        }

        foreach (var channel in answers.Channels.Where(c => c.Gear is Amplifier && c.Loaded is not null && c.Fault == LoadFault.None))
        {
            rows.Add([$"Load on {channel.Id}, nominal (a meter shows about three quarters of it)", $"{channel.Nominal}", ""]);
        }

        rows.Add(["Current at rest, everything asleep", $"{answers.Energy.StandbyCurrent}", ""]);
        return new([new("What"), new("Computed", true), new("Measured")], rows.ToImmutable());
    }
}
