using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Specs;

/// <summary>What was computed for a reading.</summary>
/// <param name="Words">The value, to show.</param>
/// <param name="Fits">Whether the reading lies within the tolerance.</param>
internal sealed record ExpectedReading(string Words, bool Fits)
{
    /// <summary>Meters and clamps as installers have them, and what a contact adds (common practice, no published source).</summary>
    private const double VoltsShare = 0.01;

    private const double VoltsMore = 0.1;
    private const double OtherShare = 0.1;
    private const double AmpsMore = 0.005;
    private const double OhmsMore = 0.1;

    /// <summary>The resistance of a coil lies this far below its nominal impedance at most (common practice, no published source).</summary>
    private const double LeastOfNominal = 0.65;

    /// <summary>Null if nothing of the kind was computed there.</summary>
    public static ExpectedReading? Of(Install install, Reading reading)
    {
        var at = reading.At!.Value.Value;
        var words = reading.Reads!.Value.Value;
        var state = install.Answers.States.First(s => States.Words[(int)s.State] == (reading.State?.Value ?? "full output"));
        if (Quantity.TryRead<Volts>(words, out var volts, out _))
        {
            return Channel(install, at) is { TargetVolts: { } target } ? Near(volts.Value, target.Value, OtherShare, VoltsMore, target.ToString())
                : state.IsSolved && Between(install, state, at, reading.Against?.Value) is { } v ? Near(volts.Value, v.Value, VoltsShare, VoltsMore, v.ToString()) : null;
        }

        if (Quantity.TryRead<Amps>(words, out var amps, out _))
        {
            return state.IsSolved && Through(install, state, at) is { } a ? Near(amps.Value, Math.Abs(a.Value), OtherShare, AmpsMore, new Amps(Math.Abs(a.Value)).ToString()) : null;
        }

        return Quantity.TryRead<Ohms>(words, out var ohms, out _) ? Resistance(install, at, ohms) : null;
    }

    private static ExpectedReading Near(double read, double computed, double share, double more, string words) =>
        new(words, Math.Abs(read - computed) <= (Math.Abs(computed) * share) + more);

    private static ChannelAnswer? Channel(Install install, string at) => install.Answers.Channels.FirstOrDefault(c => c.Id == at && c.Gear is Amplifier);

    private static Volts? Between(Install install, StateAnswer state, string at, string? against)
    {
        var wiring = install.Wiring;
        var plus = wiring.TerminalsById.GetValueOrDefault(at) ?? wiring.TerminalsById.GetValueOrDefault(at + ".+");
        var minus = against is null ? plus?.Gear is { } gear ? wiring.TerminalOf(gear, "-") ?? wiring.Body : null
            : wiring.TerminalsById.GetValueOrDefault(against) ?? wiring.TerminalsById.GetValueOrDefault(against + ".-");
        return plus is not null && minus is not null && state.Volts[plus.Index] is { } high && state.Volts[minus.Index] is { } low ? high - low : null;
    }

    /// <summary>The current in a run, or out of a battery.</summary>
    private static Amps? Through(Install install, StateAnswer state, string at)
    {
        if (install.Wiring.RunsById.TryGetValue(at, out var run))
        {
            return run.Conductors.IsEmpty ? null : state.Amps[run.Conductors[0].Index];
        }

        var source = at.EndsWith(".+", StringComparison.Ordinal) || at.EndsWith(".-", StringComparison.Ordinal) ? at[..^2] : at;
        return state.Sources.FirstOrDefault(s => s.Id == source)?.Amps ?? state.Loads.FirstOrDefault(l => l.Path.Gear.Id == source)?.Amps;
    }

    private static ExpectedReading? Resistance(Install install, string at, Ohms read)
    {
        if (Channel(install, at) is { Loaded: { } loaded } channel)
        {
            var least = channel.Nominal!.Value.Value * LeastOfNominal;
            return new($"{new Ohms(least)} to {loaded}", read.Value >= least - OhmsMore && read.Value <= (loaded.Value * (1 + OtherShare)) + OhmsMore);
        }

        if (!install.Wiring.RunsById.TryGetValue(at, out var run) || run.Conductors.IsEmpty)
        {
            return null;
        }

        // From one end of one conductor to the other: the pieces before and after a fuse lie in a row.
        var ohms = new Ohms(run.Conductors.Where(c => !c.IsJumper && (run.Holder is not null || c.Index == run.Conductors[0].Index)).Sum(c => install.Answers.Conductors[c.Index].Resistance20.Value));
        return Near(read.Value, ohms.Value, OtherShare, OhmsMore, ohms.ToString());
    }
}
