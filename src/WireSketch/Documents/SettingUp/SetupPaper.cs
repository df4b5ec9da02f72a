using System.Collections.Immutable;
using WireSketch.Documents.Formats;
using WireSketch.Documents.Lists;
using WireSketch.Electrical;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Documents.SettingUp;

/// <summary>The sheet for first power-up, for setting gains and filters, and for writing down what was measured.</summary>
internal static class SetupPaper
{
    private static readonly ImmutableArray<Decibels> Recorded = [new(0), new(-5), new(-10)];

    private static readonly ImmutableArray<string> Gain =
    [
        "Speakers off the channel, or the volume where nothing can be harmed. Equalizers, boost and loudness off. Ears protected, "
            + "nobody else in the vehicle.",
        "Source at the highest volume at which it does not clip; if you cannot see that on an oscilloscope, three quarters of its range "
            + "(common practice).",
        "Play the tone. Mind the level at which it was recorded: the table gives the volts for three.",
        "Raise the gain until a true-rms meter at the output shows the target; an oscilloscope must still show a clean wave. Stop at "
            + "whichever comes first.",
        "A tone at full level heats coils far more than music: with speakers on, a few seconds at a time.",
        "Write down what you reached, and mark the dial.",
    ];

    private static readonly ImmutableArray<string> TimeAndPhase =
    [
        "Polarity first: a battery pulse or a polarity tone, every driver the same way. Tweeters only by a tone: a battery harms them.",
        "Measure the distance of every driver to the listener's ears; delay the near ones by the difference over 343 m/s (20 C).",
        "Then at the hand-over frequency, one pair at a time: turn the polarity of the subwoofer and keep the louder setting.",
        "Levels last, by ear or by a meter, from the front to the rear.",
    ];

    public static Paper Write(PaperHead head)
    {
        var install = head.Install;
        var channels = ChannelSetup.From(install);
        var paper = head.Begin("Set-up")
            .Heading(2, "Cautions").List(Cautions.ForTechnicians)
            .Heading(2, "Before power").List(BeforePower(channels), boxes: true)
            .Heading(2, "First power").Steps(FirstPower(install, channels));
        if (!install.Answers.Wakes.IsEmpty)
        {
            paper.Heading(2, "What wakes what").Table(Waking(install));
        }

        if (!channels.IsEmpty)
        {
            paper.Heading(2, "Filters")
                .Paragraph(
                    "Where the spec names a setting it is taken, with the device where it is not the amplifier's own; the others are "
                        + "where to begin (common practice, no published source).")
                .Table(Filters(channels))
                .Heading(2, "Gain").Steps(Gain).Table(Targets(channels))
                .Heading(2, "Time and phase").Steps(TimeAndPhase);
        }

        return paper.Heading(2, "Measured")
            .Paragraph(
                "Computed values hold at full output, engine running, unless it says otherwise. What differs by more than the meter's "
                    + "tolerance has a cause: find it. Written under readings in the spec, it is compared and the likeliest cause named.")
            .Table(Readings(install))
            .ToPaper("setup.md");
    }

    private static IEnumerable<string> BeforePower(ImmutableArray<ChannelSetup> channels)
    {
        yield return "Main fuses out, negative of every battery off.";
        yield return "Every fuse of the rating on the hand-over page, none bridged.";
        yield return "Every supply wire against the body: no continuity.";
        yield return "Every ground against the battery's negative post: under 0.5 ohm with the leads' own resistance taken off (common "
            + "practice).";
        if (!channels.IsEmpty)
        {
            yield return "Every speaker pair at the amplifier: the resistance of its coils, and nothing to the body.";
            yield return "Gains lowest, boosts and equalizers off, filters as below, source at zero.";
        }
    }

    private static IEnumerable<string> FirstPower(InstalledSystem install, ImmutableArray<ChannelSetup> channels)
    {
        var mains = install.Wiring.Links.Where(l => l.Protects && FuseStyleChoice.IsFitted(install, l) && IsFirst(install, l))
            .Select(l => l.Rating is { } r ? $"{l.Id} ({r})" : l.Id)
            .ToArray();
        var main = mains.Length == 0 ? "the main fuse"
            : mains.Length <= 6 ? string.Join(", then ", mains)
            : "the fuses at the batteries, one after the other";
        yield return $"Connect the battery's negative, then fit {main}. A small spark is a capacitor charging; a large one is a fault: "
            + "stop.";
        yield return channels.IsEmpty
            ? "Everything off: measure the current at rest. It must fall to the computed value within minutes."
            : "Without the source on: measure the current at rest. It must fall to the computed value within minutes.";
        if (channels.IsEmpty)
        {
            yield return "Switch on one device after the other: it runs, its fuse stays whole, its wires stay cool. Switch it off: it "
                + "rests.";
            yield break;
        }

        yield return "Source on: every device wakes. Source off: every device sleeps again.";
        yield return "Play something quietly on one channel at a time: left is left, front is front.";
    }

    /// <summary>Whether nothing protects what lies between a source and it.</summary>
    private static bool IsFirst(InstalledSystem install, InternalConnection link) =>
        install.Wiring.Feeds.Where(f => install.Wiring.SourceAt(f.Source)?.Source is BatterySource)
            .SelectMany(f => f.Conductors)
            .Any(c => c.Protections.Length == 1 && c.Protections[0].Index == link.Index);

    private static PlainTable Waking(InstalledSystem install) => new(
        [new("Device"), new("Switch"), new("Woken by"), new("Live with the ignition off")],
        [
            .. install.Answers.Wakes.Select(w =>
                ImmutableArray.Create(
                    w.Gear.Id,
                    WakeModes.Words[w.Mode],
                    w.Source ?? (w.By is { } by ? WakeModes.Words[by] : null) ?? "nothing",
                    w.LiveWithIgnitionOff ? "yes" : "no"))
        ]);

    private static PlainTable Filters(ImmutableArray<ChannelSetup> channels) => new(
        [new("Channel"), new("Load", true), new("High-pass"), new("Low-pass"), new("Subsonic"), new("Remarks")],
        [
            .. channels.Select(c =>
                ImmutableArray.Create(c.Channel, $"{c.Load}", c.HighPass, c.LowPass, c.Subsonic, string.Join("; ", c.Remarks)))
        ]);

    private static PlainTable Targets(ImmutableArray<ChannelSetup> channels) => new(
        [new("Channel"), new("Tone", true), .. Recorded.Select(r => new Column($"Tone recorded at {r}", true)), new("Reached")],
        [
            .. channels.Select(c => ImmutableArray.CreateRange(
                [c.Channel, $"{c.Tone}", .. Recorded.Select(r => c.TargetFor(r) is { } v ? $"{v}" : "unknown"), ""])),
        ]);

    private static PlainTable Readings(InstalledSystem install)
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

        foreach (var channel in answers.Channels.Where(c =>
            c.Output.Amplifies is not null && c.Loaded is not null && c.Fault == LoadFault.None))
        {
            rows.Add(channel.Meter is { } meter
                ? [$"Ohms at {channel.Id}, speakers on, amplifier off", $"{meter}", ""]
                : [$"Load on {channel.Id}, nominal (a meter shows about three quarters of it)", $"{channel.Nominal}", ""]);
        }

        var own = install.Wiring.Starter is not null ? $", {Defaults.RestCurrent(install.Wiring)} of it the vehicle itself" : "";
        var unstated = RestTime.Unstated(install) is { Length: > 0 } u
            ? $"; {EnglishText.And(u)} counted as nothing, as nobody states {(u.Length == 1 ? "its" : "their")} standby"
            : "";
        rows.Add([$"Current at rest, everything asleep{own}{unstated}", $"{answers.Energy.StandbyCurrent}", ""]);
        return new([new("What"), new("Computed", true), new("Measured")], rows.ToImmutable());
    }
}
