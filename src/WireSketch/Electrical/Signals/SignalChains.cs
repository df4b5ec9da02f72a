using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Signals;

/// <summary>Follows every signal input back to its source, and works out what arrives.</summary>
internal sealed class SignalChains(Wiring wiring)
{
    private readonly ILookup<string, Terminal> outputs = wiring.Terminals
        .Where(t =>
            t.Gear is not null && t.Side == '+' && t.Shape.Flow == TerminalFlow.Out && t.Role is TerminalRole.Line or TerminalRole.Speaker)
        .ToLookup(t => wiring.NetOf[t.Index].Id, StringComparer.Ordinal);

    public ImmutableArray<SignalResult> Solve() => [.. wiring.Gear.SelectMany(g => g.SignalInputs.Select(i => Answer(g, i)))];

    /// <summary>The output that drives an input, or null.</summary>
    private Terminal? Feeding(Gear device, TerminalShape input) =>
        outputs[wiring.NetOf[wiring.PlusOf(device, input).Index].Id].FirstOrDefault();

    private SignalResult Answer(Gear device, SignalInput input)
    {
        var chain = new List<Gear>();
        var feed = Feeding(device, input.Terminal);
        var arriving = feed is null ? Arriving.Nothing : Follow(feed, chain, [device.Id]);
        chain.Reverse();
        var level = feed is null ? (SignalLevel?)null : feed.Role == TerminalRole.Speaker ? SignalLevel.Speaker : SignalLevel.Line;
        var accepts = input.At(level);
        return new(
            device, input.Terminal.Name, [.. chain], level, arriving.Maximum, accepts.Range, accepts.Takes, arriving.Changes,
            arriving.Lowest, arriving.Loops, feed?.Id[..^2]);
    }

    private sealed record Arriving(Volts? Maximum, Hertz? Lowest, int Changes, bool Loops)
    {
        public static Arriving Nothing { get; } = new(null, null, 0, false);
    }

    /// <summary>What an output gives, following the signal back through the devices it came by.</summary>
    private Arriving Follow(Terminal terminal, List<Gear> chain, ImmutableHashSet<string> met)
    {
        var device = terminal.Gear!;
        if (met.Contains(device.Id))
        {
            return new(null, null, 0, true);
        }

        chain.Add(device);
        if (device.SignalOutputs.FirstOrDefault(o => o.Terminal == terminal.Shape) is not { } output)
        {
            return Arriving.Nothing;
        }

        if (output.CarriesOn.IsEmpty)
        {
            return new(output.Maximum?.Value, output.Lowest?.Value, 0, false);
        }

        var before = output.CarriesOn.Select(i => Feeding(device, i)).OfType<Terminal>().FirstOrDefault();
        var into = before is null ? Arriving.Nothing : Follow(before, chain, met.Add(device.Id));
        var follows = output.Ratio is { } ratio && into.Maximum is { } most ? most * ratio.Value : (Volts?)null;
        return into with
        {
            Maximum = output.Maximum?.Value ?? MostOf(output) ?? follows,
            Changes = into.Changes + (output.ChangesLevel ? 1 : 0)
        };
    }

    /// <summary>An amplifier that is a source like a radio: the square of its volts is power times load.</summary>
    private static Volts? MostOf(SignalOutput output) =>
        output.Amplifies is { Power: { IsEmpty: false } power }
            ? new Volts(Math.Sqrt(power.Max(p => p.Key.Value.Value * p.Value.Value.Value)))
            : null;
}
