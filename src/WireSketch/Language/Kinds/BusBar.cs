using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A bus bar or ground block: one node for any number of runs.</summary>
public sealed record BusBar : Gear
{
    public override string Kind => Ground ? "ground block" : "bus bar";

    public override ImmutableArray<TerminalShape> Terminals => [Node("", Ground ? TerminalRole.Ground : TerminalRole.Any)];

    public bool Ground { get; init; }

    public Written<int>? Studs { get; init; }

    public Written<Amps>? Rating { get; init; }

    internal static BusBar Read(Fields f, bool ground) => new()
    {
        Name = f.Key,
        Ground = ground,
        Studs = f.Count("studs", "the most runs it takes"),
        Rating = f.Amount<Amps>("rating", "what it carries"),
    };
}
