using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply;

/// <summary>A signal cable that is to carry supply.</summary>
internal sealed class SignalCable : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/signal-cable",
        Severity.Error,
        Title: "A signal cable carries supply or ground",
        Why: """
            A line pair is made of hair-thin cores and a shield: no fuse protects it, and supply in it is heard in every signal beside it.
            Supply and ground need wire with a size.
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

    public override IEnumerable<Finding> Check(Install install) =>
        from run in install.Wiring.Runs
        where run.Wire.IsLinePair && (run.Kind is RunKind.Supply or RunKind.Ground)
        select Found(RunWords.WireAt(run), $"{run.Id} carries {(run.Kind == RunKind.Supply ? "supply" : "ground")} in a line pair, which is a signal cable", "write a size, such as wire: 18 AWG red", run.Id);
}
