using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A plug: each cavity is one node.</summary>
public sealed record Connector : Gear
{
    public override string Kind => "connector";

    public override ImmutableArray<TerminalShape> Terminals =>
        [.. Enumerable.Range(1, Cavities).Select(n => Node(n.ToString(CultureInfo.InvariantCulture), TerminalRole.Any))];

    public int Cavities { get; init; }

    public Written<WireSize>? Gauge { get; init; }

    public Written<Amps>? Rating { get; init; }

    internal static Connector Read(Fields f) => new()
    {
        Name = f.Key,
        Cavities = f.Count("cavities", "number of cavities", "1")?.Value ?? 1,
        Gauge = f.Size("gauge", "thickest wire a cavity takes"),
        Rating = f.Amount<Amps>("rating", "what a cavity carries"),
    };
}
