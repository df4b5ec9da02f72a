using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Signals;

/// <summary>A summing amplifier that gets one side of the music.</summary>
internal sealed class SignalOneSideOnly : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/one-side-only",
        Severity.Advice,
        Title: "A summing amplifier gets one side only",
        Why: """
            An amplifier with a single channel adds left and right. Fed from the left alone it misses what is on the right, and most such
            inputs then give half the level. A mono output goes to both inputs by a Y-cable.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { rear: { channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, channels: { sub: { minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
              L1: { from: radio.rear.left, to: amp.in.left, wire: line pair, length: 12 ft } #! signal/one-side-only
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { rear: { channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, channels: { sub: { minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
              L1: { from: radio.rear, to: amp.in, wire: line pair, length: 12 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var amp in install.Spec.Gear.Where(SignalRoles.AmplifiesOneChannel))
        {
            var inputs = install.Answers.Signals.Where(s => ReferenceEquals(s.Gear, amp)).ToArray();
            var fed = inputs.Where(i => i.FedBy is not null).ToArray();
            if (inputs.Length == 2 && fed.Length == 1)
            {
                var other = inputs.First(i => i.FedBy is null);
                var (source, output) = SignalFeeds.SourceOf(install, fed[0]);
                var mono = SignalFeeds.OutputOf(source, output) is { ChangesLevel: false, Amplifies: null, Group: { Length: > 0 } group }
                    && source!.SignalOutputs.Count(o => o.Group == group) == 1;
                yield return Report(
                    SignalFeeds.PlaceOf(install.Wiring, fed[0]),
                    $"{SignalFeeds.Name(fed[0])} gets {fed[0].FedBy} and {SignalFeeds.Name(other)} gets nothing",
                    mono
                        ? $"bring {fed[0].FedBy} to both: to: [{amp.Id}.in.left, {amp.Id}.in.right]"
                        : $"bring the other side to {SignalFeeds.Name(other)}",
                    amp.Id,
                    SignalFeeds.RunOf(install.Wiring, fed[0])?.Id ?? amp.Id);
            }
        }
    }
}
