using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A stiffening capacitor.</summary>
public sealed record Capacitor : Gear
{
    public override string Kind => "capacitor";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.In), Node("-", TerminalRole.Ground)];

    public Written<Farads>? Capacity { get; init; }

    public Written<Ohms>? Internal { get; init; }

    internal static Capacitor Read(Fields f) => new()
    {
        Name = f.Key,
        Capacity = f.Amount<Farads>("capacity", "capacitance; stands in the lists, and changes nothing that is computed: no current flows into a charged capacitor"),
        Internal = f.Amount<Ohms>("internal", "series resistance; stands in the lists, and changes nothing that is computed: no current flows into a charged capacitor"),
    };
}
