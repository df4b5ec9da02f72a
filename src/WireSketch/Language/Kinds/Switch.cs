using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A switch.</summary>
public sealed record Switch : Gear
{
    public override string Kind => "switch";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("in", TerminalRole.Any, TerminalFlow.In), Node("out", TerminalRole.Any, TerminalFlow.Out)];

    public Written<Amps>? Rating { get; init; }

    public ImmutableArray<Written<SystemState>> Closed { get; init; } = [];

    internal static Switch Read(Fields f) => new()
    {
        Name = f.Key,
        Rating = f.Amount<Amps>("rating", "what it carries"),
        Closed = f.Choices("closed", "states in which it is closed", SystemStates.Words),
    };
}
