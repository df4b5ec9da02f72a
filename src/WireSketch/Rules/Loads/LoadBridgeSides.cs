using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Loads;

/// <summary>A load between the wrong sides of two channels that may be bridged.</summary>
internal sealed class LoadBridgeSides : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/bridge-sides",
        Severity.Error,
        Title: "A bridge is taken from the wrong sides",
        Why: """
            Bridged channels drive the load from the + of one and the - of the other. Between the two + sides, or the two - sides, both move
            together: little or no sound, and on some amplifiers a fault. Marks on the terminals say which two belong to the bridge.
            """,
        new Basis.Reasoning("the halves of a bridge must move against each other at the two ends of the load"),
        Bad: """
            gear:
              amp:
                is: amplifier
                origin: existing
                channels:
                  rl: { power: { 4 ohm: 75 W }, minimum: 2 ohm, bridges-with: rr, bridged: { 4 ohm: 220 W }, settings: { low-pass: 80 Hz } }
                  rr: { power: { 4 ohm: 75 W }, minimum: 2 ohm }
              sub: { is: subwoofer, coils: 4 ohm, handles: 300 W }
            runs:
              S1: { from: [amp.rl.+, amp.rr.+], to: sub, wire: 12 AWG, length: 9 ft } #! load/bridge-sides
            """,
        Good: """
            gear:
              amp:
                is: amplifier
                origin: existing
                channels:
                  rl: { power: { 4 ohm: 75 W }, minimum: 2 ohm, bridges-with: rr, bridged: { 4 ohm: 220 W }, settings: { low-pass: 80 Hz } }
                  rr: { power: { 4 ohm: 75 W }, minimum: 2 ohm }
              sub: { is: subwoofer, coils: 4 ohm, handles: 300 W }
            runs:
              S1: { from: [amp.rl.+, amp.rr.-], to: sub, wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var amp in install.Spec.Gear)
        {
            foreach (var (half, other) in BridgeSides.Bridges(amp))
            {
                if (BridgeSides.Between(install, amp, half, other) is { } found
                    && !(Says(amp, other, half) && BridgeSides.Between(install, amp, other, half) is null))
                {
                    yield return Report(
                        found.Run.Run.From[0].At,
                        $"{found.Run.Id} takes its load from {found.A.Id} and {found.B.Id}: its bridge lies between {amp.Id}.{half}.+ "
                            + $"and {amp.Id}.{other}.-",
                        $"write from: [{amp.Id}.{half}.+, {amp.Id}.{other}.-], or as the marks on {amp.Id} say",
                        $"{amp.Id}.{half}",
                        amp.Id,
                        found.Run.Id) with
                    {
                        Notes = [
                            new(
                                "here the two are said to bridge",
                                amp.SignalOutputs.First(o => o.Amplifies?.Name.Value == half).Amplifies!.BridgesWith!.Value.At)
                        ],
                    };
                }
            }
        }
    }

    private static bool Says(Gear amp, string half, string other) =>
        BridgeSides.Bridges(amp).Any(b => b.Half == half && b.Other == other);

}
