using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>An alternator: a regulated source with a current limit.</summary>
public sealed record Alternator : Gear
{
    public override string Kind => "alternator";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.Out), Node("-", TerminalRole.Ground)];

    public Written<Amps>? Output { get; init; }

    public Written<Amps>? Idle { get; init; }

    public Written<Volts>? Regulated { get; init; }

    internal static Alternator Read(Fields f) => new()
    {
        Name = f.Key,
        Output = f.Amount<Amps>("output", "output when hot, at speed", "job.vehicle.alternator"),
        Idle = f.Amount<Amps>("idle", "output with the engine idling", "half of its output (common practice)"),
        Regulated = f.Amount<Volts>("regulated", "the voltage it regulates to", "job.vehicle.running, or 14.2 V"),
    };
}
