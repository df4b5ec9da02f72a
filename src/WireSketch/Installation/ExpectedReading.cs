using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Electrical.Readings;
using WireSketch.Electrical.Speakers;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>What was computed for a reading.</summary>
/// <param name="Value">The value that was read.</param>
/// <param name="Computed">What was computed for it, to show.</param>
/// <param name="Fits">Whether the reading lies within the tolerance.</param>
internal sealed record ExpectedReading(PrintedValue Value, PrintedValue Computed, bool Fits)
{
    /// <summary>What was computed, in words.</summary>
    public string Words => Computed.Text;

    /// <summary>Meters and clamps as installers have them, and what a contact adds (common practice, no published source).</summary>
    private const double VoltsShare = 0.01;

    private const double VoltsMore = 0.1;
    private const double OtherShare = 0.1;
    private const double AmpsMore = 0.005;
    private const double OhmsMore = 0.1;

    /// <summary>
    /// The resistance of a coil lies this far below its nominal impedance at most (common practice, no published source).
    /// </summary>
    private const double LeastOfNominal = 0.65;

    /// <summary>Null if nothing of the kind was computed there.</summary>
    public static ExpectedReading? Of(InstalledSystem install, Reading reading)
    {
        var at = reading.At!.Value.Value;
        var words = reading.Reads!.Value.Value;
        var state = StateOf(install, reading);
        if (Quantity.TryRead<Volts>(words, out var volts, out _))
        {
            return Channel(install, at) is { TargetVolts: { } target } ? Near(words, volts, target, OtherShare, VoltsMore)
                : state.IsSolved && Between(install, state, at, reading.Against?.Value) is { } v
                ? Near(words, volts, v, VoltsShare, VoltsMore)
                : null;
        }

        if (Quantity.TryRead<Amps>(words, out var amps, out _))
        {
            return state.IsSolved && Through(install, state, at) is { } a
                ? Near(words, amps, new Amps(Math.Abs(a.Value)), OtherShare, AmpsMore)
                : null;
        }

        return Quantity.TryRead<Ohms>(words, out var ohms, out _) ? Resistance(install, at, ohms, words) : null;
    }

    /// <summary>A reading of volts in a state, as far as it is between terminals of the supply; null for any other.</summary>
    public static VoltReading? VoltsOf(InstalledSystem install, Reading reading, SystemState state)
    {
        var answer = install.Answers.State(state);
        var at = reading.At!.Value.Value;
        return StateOf(install, reading).State == state
            && answer.IsSolved
            && Channel(install, at) is null
            && Quantity.TryRead<Volts>(reading.Reads!.Value.Value, out var read, out _)
            && Ends(install, at, reading.Against?.Value) is { } ends
            && answer.Volts[ends.Plus.Index] is { } high
            && answer.Volts[ends.Minus.Index] is { } low
            ? new(ends.Plus, ends.Minus, read, high - low)
            : null;
    }

    /// <summary>The state in which a reading was taken.</summary>
    public static StateResult StateOf(InstalledSystem install, Reading reading) =>
        install.Answers.State(reading.State?.Value ?? SystemState.FullOutput);

    /// <summary>The single broken coil that a reading of ohms looks like, in words; null if several or none would read so.</summary>
    public static string? CoilFaultOf(InstalledSystem install, Reading reading)
    {
        if (!Quantity.TryRead<Ohms>(reading.Reads!.Value.Value, out var read, out _)
            || Channel(install, reading.At!.Value.Value) is not { } channel)
        {
            return null;
        }

        var halves = ChannelWiring.Halves(channel);
        var (plus, minus) = (ChannelWiring.Sides(install.Wiring, halves[0])[0], ChannelWiring.Sides(install.Wiring, halves[^1])[1]);
        var wires = (channel.Loaded?.Value ?? 0) - (channel.Nominal?.Value ?? 0);
        var like = CoilFaults.Between(install.Wiring, plus, minus)
            .Where(f =>
                f.Load is { } z
                    && read.Value >= (z.Value * LeastOfNominal) - OhmsMore
                    && read.Value <= ((z.Value + wires) * (1 + OtherShare)) + OhmsMore)
            .ToArray();
        var kinds = like.Select(f => f.IsOpen).Distinct().ToArray();
        if (kinds.Length != 1)
        {
            return null;
        }

        var coils = like.Select(f => f.Speaker.CoilCount == 1 ? f.Speaker.Id : $"{f.Speaker.Id}.coil.{f.Coil}").ToArray();
        return $"{(kinds[0] ? "an open" : "a shorted")} coil would read so: {EnglishText.Or(coils)}";
    }

    private static ExpectedReading Near<T>(string words, T read, T computed, double share, double more)
        where T : struct, IQuantity<T> => new(
            PrintedValue.Of(read, words),
            PrintedValue.Of(computed, Quantity.Print(computed)),
            Math.Abs(read.Value - computed.Value) <= (Math.Abs(computed.Value) * share) + more);

    private static ChannelResult? Channel(InstalledSystem install, string at) =>
        install.Answers.Channels.FirstOrDefault(c => c.Id == at && c.Output.Amplifies is not null);

    private static Volts? Between(InstalledSystem install, StateResult state, string at, string? against) =>
        Ends(install, at, against) is { } ends && state.Volts[ends.Plus.Index] is { } high && state.Volts[ends.Minus.Index] is { } low
            ? high - low
            : null;

    /// <summary>Where the two leads of the meter were.</summary>
    private static (Terminal Plus, Terminal Minus)? Ends(InstalledSystem install, string at, string? against)
    {
        var wiring = install.Wiring;
        var plus = wiring.TerminalsById.GetValueOrDefault(at) ?? wiring.TerminalsById.GetValueOrDefault(at + ".+");
        var minus = against is null ? plus?.Gear is { } gear ? wiring.TerminalOf(gear, "-") ?? wiring.Body : null
            : wiring.TerminalsById.GetValueOrDefault(against) ?? wiring.TerminalsById.GetValueOrDefault(against + ".-");
        return plus is not null && minus is not null ? (plus, minus) : null;
    }

    /// <summary>The current in a run, or out of a battery.</summary>
    private static Amps? Through(InstalledSystem install, StateResult state, string at)
    {
        if (install.Wiring.RunsById.TryGetValue(at, out var run))
        {
            return run.Conductors.IsEmpty ? null : state.Amps[run.Conductors[0].Index];
        }

        var source = install.Wiring.TerminalsById.GetValueOrDefault(at) is { Shape.Name: "+" or "-", Gear: { } gear } ? gear.Id : at;
        return state.Sources.FirstOrDefault(s => s.Id == source)?.Amps ?? state.Loads.FirstOrDefault(l => l.Path.Gear.Id == source)?.Amps;
    }

    private static ExpectedReading? Resistance(InstalledSystem install, string at, Ohms read, string words)
    {
        if (Channel(install, at) is { Meter: { } meter })
        {
            return Near(words, read, meter, OtherShare, OhmsMore);
        }

        if (Channel(install, at) is { Loaded: { } loaded } channel)
        {
            var least = channel.Nominal!.Value.Value * LeastOfNominal;
            return new(
                PrintedValue.Of(read, words),
                PrintedValue.Of(loaded, $"{new Ohms(least)} to {loaded}"),
                read.Value >= least - OhmsMore && read.Value <= (loaded.Value * (1 + OtherShare)) + OhmsMore);
        }

        if (!install.Wiring.RunsById.TryGetValue(at, out var run) || run.Conductors.IsEmpty)
        {
            return null;
        }

        // From one end of one conductor to the other: the pieces before and after a fuse lie in a row.
        var ohms = new Ohms(run.Conductors.Where(c => !c.IsJumper && (run.Holder is not null || c.Index == run.Conductors[0].Index))
            .Sum(c => install.Answers.Conductors[c.Index].Resistance20.Value));
        return Near(words, read, ohms, OtherShare, OhmsMore);
    }
}
