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
        .Where(t => t.Gear is not null && t.Side == '+' && t.Shape.Flow == TerminalFlow.Out && t.Role is TerminalRole.Line or TerminalRole.Speaker)
        .ToLookup(t => wiring.NetOf[t.Index].Id, StringComparer.Ordinal);

    public ImmutableArray<SignalResult> Solve() => [.. wiring.Gear.SelectMany(InputsOf).Select(i => Answer(i.Gear, i.Shape))];

    /// <summary>The output that drives an input, or null.</summary>
    private Terminal? Feeding(Gear device, TerminalShape input) =>
        outputs[wiring.NetOf[wiring.TerminalsById[$"{device.Id}.{input.Name}.+"].Index].Id].FirstOrDefault();

    private static IEnumerable<(Gear Gear, TerminalShape Shape)> InputsOf(Gear device) => device is Amplifier or Processor or LevelAdapter
        ? device.Terminals.Where(s => s.Form == TerminalForm.Group && s.Flow == TerminalFlow.In).SelectMany(s => s.Members).Select(m => (device, m))
        : [];

    private SignalResult Answer(Gear device, TerminalShape input)
    {
        var chain = new List<Gear>();
        var feed = Feeding(device, input);
        var arriving = feed is null ? new Arriving(null, null, 0, false) : Follow(feed, chain, [device.Id]);
        chain.Reverse();
        var level = feed is null ? (SignalLevel?)null : feed.Role == TerminalRole.Speaker ? SignalLevel.Speaker : SignalLevel.Line;
        var (takes, accepts) = Accepts(device, input, level);
        return new(device, input.Name, [.. chain], level, arriving.Maximum, accepts, takes, arriving.Changes, arriving.Lowest, arriving.Loops, feed?.Id[..^2]);
    }

    private sealed record Arriving(Volts? Maximum, Hertz? Lowest, int Changes, bool Loops);

    /// <summary>What an output gives, following the signal back through the devices it came by.</summary>
    private Arriving Follow(Terminal output, List<Gear> chain, ImmutableHashSet<string> met)
    {
        var device = output.Gear!;
        if (met.Contains(device.Id))
        {
            return new(null, null, 0, true);
        }

        chain.Add(device);
        var group = output.Shape.Name.Split('.')[0];
        switch (device)
        {
            case HeadUnit radio:
                var source = radio.Outputs.First(o => o.Name.Value == group);
                return new(source.Maximum?.Value, source.Lowest?.Value, 0, false);
            case TapPoint tap:
                return new(tap.Maximum?.Value, null, 0, false);
            case Amplifier amp:
                // An amplifier that came with the vehicle is a source like a radio: the square of its volts is power times load.
                var own = amp.Channels.First(c => c.Name.Value == output.Shape.Name);
                var most = own.Power.IsEmpty ? (Volts?)null : new Volts(Math.Sqrt(own.Power.Max(p => p.Key.Value.Value * p.Value.Value.Value)));
                var behind = InputsOf(device).Select(i => Feeding(device, i.Shape)).OfType<Terminal>().FirstOrDefault();
                var drives = behind is null ? new Arriving(null, null, 0, false) : Follow(behind, chain, met.Add(device.Id));
                return drives with { Maximum = most };
            case Processor processor:
                var made = processor.Outputs.First(o => o.Name.Value == group);
                var before = InputsOf(device).Select(i => Feeding(device, i.Shape)).OfType<Terminal>().FirstOrDefault();
                var into = before is null ? new Arriving(null, null, 0, false) : Follow(before, chain, met.Add(device.Id));
                return into with { Maximum = made.Maximum?.Value };
            case LevelAdapter adapter:
                var member = output.Shape.Name["out.".Length..];
                var taken = adapter.Terminals.First(s => s.Name == "in").Members.First(m => m.Name == "in." + member);
                var ahead = Feeding(device, taken) is { } t ? Follow(t, chain, met.Add(device.Id)) : new Arriving(null, null, 0, false);
                var ratio = adapter.Ratio is { } r && ahead.Maximum is { } m ? m * r.Value : (Volts?)null;
                return ahead with { Maximum = adapter.Output?.Value ?? ratio, Changes = ahead.Changes + 1 };
            default:
                return new(null, null, 0, false);
        }
    }

    private static (bool Takes, Range<Volts>? Accepts) Accepts(Gear device, TerminalShape input, SignalLevel? level)
    {
        switch (device)
        {
            case Amplifier amp:
                return level == SignalLevel.Speaker ? (amp.InputSpeaker is not null, amp.InputSpeaker?.Value) : (amp.InputLine is not null || amp.InputSpeaker is null, amp.InputLine?.Value);
            case Processor processor:
                var group = processor.Inputs.First(i => i.Name.Value == input.Name.Split('.')[0]);
                return (level is null || group.Level == level, group.Maximum is { } most ? new(new(0), most.Value) : null);
            case LevelAdapter adapter:
                return (level != SignalLevel.Line, adapter.Maximum is { } max ? new(new(0), max.Value) : null);
            default:
                return (true, null);
        }
    }
}
