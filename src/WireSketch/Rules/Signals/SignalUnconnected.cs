using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Signals;

/// <summary>A break in the signal chain.</summary>
internal sealed class SignalUnconnected : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/unconnected",
        Severity.Warning,
        Title: "A channel drives a load and gets no signal, or the reverse",
        Why: """
            A channel without a signal plays nothing, and a signal that ends at a channel without a load is wasted: a cable was forgotten,
            or landed on the wrong pair. If the device copies one pair of inputs to another by a switch, say so by accepting this.
            """,
        new Basis.Reasoning("every channel that is used needs an input and a load"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V }, #! signal/unconnected
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front.left, to: amp.in.left, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var found = install.Wiring.Gear.Where(SignalRoles.Amplifies)
            .SelectMany(a => OfAmplifier(install, a))
            .Concat(install.Wiring.Gear.Where(SignalRoles.Processes).SelectMany(p => OfProcessor(install, p)))
            .ToArray();
        foreach (var finding in found)
        {
            yield return finding;
        }

        // What lacks a signal further on explains an adapter that leads nowhere.
        foreach (var adapter in install.Wiring.Gear.Where(SignalRoles.ChangesLevel))
        {
            var (fed, feeds) = (IsFed(install, adapter), Leads(install.Wiring, adapter, TerminalFlow.Out));
            if (fed != feeds && (feeds || found.Length == 0))
            {
                yield return Report(
                    adapter.Name.At,
                    feeds
                        ? FindingText.Of($"{adapter.Id} feeds other devices and gets no signal")
                        : $"{adapter.Id} gets a signal and feeds nothing",
                    feeds
                        ? $"bring a speaker-level source to {adapter.Id}.in"
                        : $"run a cable from {adapter.Id}.out to the input it is meant for",
                    adapter.Id);
            }
        }
    }

    private static bool IsFed(InstalledSystem install, Gear gear) =>
        install.Answers.Signals.Any(s => ReferenceEquals(s.Gear, gear) && (s.FedBy is not null || s.Loops));

    private static bool Leads(Wiring wiring, Gear gear, TerminalFlow flow) =>
        (flow == TerminalFlow.In ? gear.SignalInputs.Select(i => i.Terminal) : gear.SignalOutputs.Select(o => o.Terminal))
            .Any(t => wiring.IsWired(wiring.PlusOf(gear, t)));

    private IEnumerable<Finding> OfAmplifier(InstalledSystem install, Gear amp)
    {
        var inputs = install.Answers.Signals.Where(s => ReferenceEquals(s.Gear, amp)).ToArray();
        var loads = install.Answers.Channels.Where(c => ReferenceEquals(c.Gear, amp)).ToArray();
        var oneChannel = SignalRoles.AmplifiesOneChannel(amp);
        var wired = Leads(install.Wiring, amp, TerminalFlow.In);
        if ((amp.InVehicle && !wired) || (loads.Length == 0 && !wired))
        {
            yield break;
        }

        if (!IsFed(install, amp))
        {
            yield return Report(
                amp.Name.At,
                wired
                    ? FindingText.Of($"no source reaches the inputs of {amp.Id}, although a cable lands there")
                    : $"{amp.Id} drives {RunText.List(Drivers(loads))} and no cable lands on its inputs",
                $"run a cable from the source to {amp.Id}.in",
                amp.Id);
            yield break;
        }

        var silent = loads.Where(c => !SignalFeeds.InputsOf(install, c).Any(s => s.FedBy is not null || s.Loops)).ToArray();
        if (silent.Length > 0)
        {
            yield return Report(
                amp.Name.At,
                $"{RunText.List(silent.Select(c => c.Id))} drive{(silent.Length == 1 ? "s" : "")} {RunText.List(Drivers(silent))} and "
                    + $"get{(silent.Length == 1 ? "s" : "")} no signal",
                $"run a cable to {RunText.List(silent.Select(c => $"{amp.Id}.in.{c.Channel}"))}, or accept this if a switch of {amp.Id} "
                    + $"copies another input",
                [amp.Id, .. silent.Select(c => c.Id)]);
        }

        var idle = oneChannel && loads.Length == 0 ? inputs.Where(s => s.FedBy is not null).Take(1).ToArray()
            : inputs.Where(s =>
                s.FedBy is not null
                    && !oneChannel
                    && !loads.Any(c => s.Input == "in." + c.Channel || s.Input == "in." + c.BridgedWith))
                .ToArray();
        if (idle.Length > 0)
        {
            yield return Report(
                amp.Name.At,
                oneChannel
                    ? FindingText.Of($"{amp.Id} gets a signal and drives nothing")
                    : $"{SignalFeeds.Names(idle)} gets a signal, and nothing is connected to "
                        + $"{(idle.Length == 1 ? "that channel" : "those channels")}",
                "connect the load, or bring the signal to the channel that has one",
                [amp.Id, .. idle.Select(SignalFeeds.Name)]);
        }
    }

    private static IEnumerable<string> Drivers(IEnumerable<ChannelResult> channels)
    {
        var all = channels.SelectMany(c => c.Coils).Select(c => c.Speaker.Id).Distinct(StringComparer.Ordinal).ToArray();
        return all.Length > 0 ? all : ["a load"];
    }

    private IEnumerable<Finding> OfProcessor(InstalledSystem install, Gear processor)
    {
        var (fed, feeds) = (IsFed(install, processor), Leads(install.Wiring, processor, TerminalFlow.Out));
        if (fed != feeds && !(processor.InVehicle && !Leads(install.Wiring, processor, feeds ? TerminalFlow.In : TerminalFlow.Out)))
        {
            yield return Report(
                processor.Name.At,
                feeds
                    ? FindingText.Of($"{processor.Id} feeds other devices and gets no signal")
                    : $"{processor.Id} gets a signal and feeds nothing",
                feeds ? "run a cable from the source to one of its inputs" : "run cables from its outputs to the amplifiers",
                processor.Id);
        }
    }
}
