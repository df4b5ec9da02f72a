using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A block that divides a cable without fuses.</summary>
public sealed record DistributionBlock : Gear
{
    public override string Kind => "distribution block";

    public override ImmutableArray<TerminalShape> Terminals =>
    [
        Node("in", TerminalRole.Any, TerminalFlow.In),
        .. Enumerable.Range(1, Outputs).Select(n => Node("out." + n.ToString(CultureInfo.InvariantCulture), TerminalRole.Any, TerminalFlow.Out)),
    ];

    public int Outputs { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<Range<WireSize>>? Fits { get; init; }

    internal static DistributionBlock Read(Fields f) => new()
    {
        Name = f.Key,
        Outputs = f.Count("outputs", "number of outputs", "2")?.Value ?? 2,
        Rating = f.Amount<Amps>("rating", "what it carries in all"),
        Fits = f.SizeRange("fits", "the cable it takes"),
    };
}
