using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Conductors;

/// <summary>A signal cable that is to carry supply, or to drive a speaker.</summary>
internal sealed class SupplySignalCable : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/signal-cable",
        Severity.Error,
        Title: "A signal cable carries supply, ground or a speaker's current",
        Why: """
            A line pair is made of hair-thin cores and a shield: no fuse protects it, and supply in it is heard in every signal beside it.
            Supply, ground and speakers need wire with a size.
            """,
        new Basis.Reasoning("a line pair is a signal cable"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              camera: { is: general load, power: 3 W }
            runs:
              P1: { from: battery, to: camera, wire: line pair, length: 12 ft, fuse: { rating: 1 A, at: 6 in } } #! supply/signal-cable
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              camera: { is: general load, power: 3 W }
            runs:
              P1: { from: battery, to: camera, wire: 2 x 18 AWG, length: 12 ft, fuse: { rating: 1 A, at: 6 in } }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from run in install.Wiring.Runs
        where run.Wire.IsLinePair
        let what = run.Kind switch
        {
            RunKind.Supply => "supply",
            RunKind.Ground => "ground",
            RunKind.Speaker when run.From.Concat(run.To).Any(TakesSpeakerCurrent) => "a speaker's current",
            _ => null,
        }
        where what is not null
        select Report(
            RunText.WireAt(run), $"{run.Id} carries {what} in a line pair, which is a signal cable",
            $"write a size, such as wire: {(run.Kind == RunKind.Speaker ? "16 AWG" : "18 AWG red")}", run.Id);

    private static bool TakesSpeakerCurrent(RunEnd end) => end.Gear.SpeakerParts.Any(p => p is VoiceCoil or CrossoverWay);
}
