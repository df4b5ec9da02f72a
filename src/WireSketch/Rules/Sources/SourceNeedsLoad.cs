using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Sources;

/// <summary>A source that needs a load and has none.</summary>
internal sealed class SourceNeedsLoad : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "source/needs-load",
        Severity.Error,
        Title: "The source sees no load and falls silent",
        Why: """
            Many vehicle radios and amplifiers check for a speaker and mute an output that has none, or limit its level. An input of high
            impedance is no load. Switch on the input load of the amplifier, behind an adapter that passes it; or lay load resistors across
            the source: 60 ohm suits most that check, about 25 ohm some.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } },
                       behavior: { mutes-without-load: 60 ohm } }
              adapter: { is: level adapter, channels: 2, output: 4.5 V }
              amp: { is: amplifier, origin: existing, wakes-on: [remote, dc offset], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true } #! source/needs-load
              L1: { from: adapter.out, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } },
                       behavior: { mutes-without-load: 60 ohm } }
              adapter: { is: level adapter, channels: 2, output: 4.5 V }
              loads: { is: load resistor, channels: 2, across: radio.front, resistance: 47 ohm, handles: 10 W }
              amp: { is: amplifier, origin: existing, wakes-on: [remote, dc offset], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true }
              L1: { from: adapter.out, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    /// <summary>One finding for a group of outputs; channels that lead to a break in the chain are told there.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        let mutes = channel.Output.MutesWithoutLoad
        where mutes is not null && channel.Fault is LoadFault.None or LoadFault.Open
        let needed = mutes.Value.Value
        where (channel.Nominal is null || channel.Nominal.Value.Value > needed.Value * SourceLoads.Tolerance)
            && !LeadsNowhere(install.Wiring, channel)
        group channel by (channel.Gear.Id, Group: channel.Channel.Split('.')[0]) into silent
        select Of(install, [.. silent], silent.First().Output.MutesWithoutLoad!.Value.Value);

    private Finding Of(InstalledSystem install, ImmutableArray<ChannelResult> silent, Ohms needed)
    {
        var first = silent[0];
        var name = silent.Length > 1 ? $"{first.Gear.Id}.{first.Channel.Split('.')[0]}" : first.Id;
        var amp = AdaptersOf(install.Wiring, first).SelectMany(x => Behind(install.Wiring, x.Adapter, x.Output))
            .FirstOrDefault(a => SwitchedLoadOf(a) is not null && a.DeviceSettings.InputLoad?.Value != InputLoadSwitch.On);
        var passes = AdaptersOf(install.Wiring, first).All(x => PassesLoad(x.Adapter, x.Input));
        var run = ChannelWiring.RunOf(install.Wiring, first);
        var setting = amp is not null && passes ? amp.DeviceSettings.InputLoad : null;
        return Report(
            amp is not null && passes ? setting?.At ?? amp.Name.At : run?.Run.Name.At ?? first.Gear.Name.At,
            first.Nominal is { } load
                ? FindingText.Of($"{name} sees {load:measured}; {first.Gear.Id} mutes an output with more than about {needed:limit}")
                : $"{name} sees no load; {first.Gear.Id} mutes an output without about {needed:limit}",
            amp is not null && passes
                ? $"set input-load: on at {amp.Id}, which puts {SwitchedLoadOf(amp)} on the source"
                : $"lay a load resistor across it: {{ is: load resistor, channels: 2, across: {name}, resistance: {needed}, handles: 10 "
                    + $"W }}",
            [first.Gear.Id, .. silent.Select(c => c.Id), .. AdaptersOf(install.Wiring, first).Select(x => x.Adapter.Id)]) with
        {
            Fixes = setting is { Value: InputLoadSwitch.Off } s ? [new("switch the input load on", [new(s.At, "on")])] : [],
        };
    }

    private static Written<Ohms>? SwitchedLoadOf(Gear gear) =>
        gear.SignalInputs.Select(i => i.SwitchedLoad).FirstOrDefault(l => l is not null);

    private static ImmutableArray<(Gear Adapter, TerminalShape Input, TerminalShape Output)> AdaptersOf(
        Wiring wiring, ChannelResult channel) =>
        [
            .. from side in ChannelWiring.Sides(wiring, channel.Id)
               where side.Side == '+'
               from t in wiring.NetOf[side.Index].Terminals
               where t is { Gear: not null, Side: '+' }
               from output in t.Gear!.SignalOutputs
               where output.ChangesLevel && output.CarriesOn.Contains(t.Shape)
               select (t.Gear, t.Shape, output.Terminal),
        ];

    private static IEnumerable<Gear> Behind(Wiring wiring, Gear adapter, TerminalShape output) =>
        wiring.NetOf[wiring.PlusOf(adapter, output).Index].Terminals.Where(t => t.Shape.Flow == TerminalFlow.In)
            .Select(t => t.Gear)
            .OfType<Gear>();

    private static bool PassesLoad(Gear adapter, TerminalShape input) =>
        adapter.SpeakerParts.Any(p => p is PassedLoadPart passed && passed.Input == input);

    /// <summary>An adapter that would pass a load on, and has no cable at its output.</summary>
    private static bool LeadsNowhere(Wiring wiring, ChannelResult channel) =>
        AdaptersOf(wiring, channel).Any(x => PassesLoad(x.Adapter, x.Input)
            && !x.Adapter.SpeakerParts.Any(p => p is ResistorPart own && own.First == x.Input)
            && !wiring.IsWired(wiring.PlusOf(x.Adapter, x.Output)));
}
