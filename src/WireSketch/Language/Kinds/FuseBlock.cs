using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using WireSketch.Tables;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A block of fuses with a common input.</summary>
public sealed record FuseBlock : Gear
{
    public override string Kind => "fuse block";

    public override ImmutableArray<TerminalShape> Terminals =>
    [
        Node("in", TerminalRole.Supply, TerminalFlow.In),
        .. Enumerable.Range(1, Outputs).Select(n => Node("out." + n.ToString(CultureInfo.InvariantCulture), TerminalRole.Supply, TerminalFlow.Out)),
        Node("-", TerminalRole.Ground),
    ];

    public int Outputs { get; init; }

    public ImmutableArray<(Written<int> Key, Written<Amps> Value)> Fuses { get; init; } = [];

    public Written<FuseStyle>? Style { get; init; }

    public Written<Amps>? Rating { get; init; }

    internal static FuseBlock Read(Fields f)
    {
        f.RequireAny("outputs", "fuses");
        var fuses = f.Numbered<Amps>("fuses", "rating of the fuse at each output");
        var highest = fuses.Select(x => x.Key.Value).DefaultIfEmpty(0).Max();
        var outputs = f.Count("outputs", "number of outputs", "the highest number in fuses");
        if (outputs is { } written && highest > written.Value)
        {
            var beyond = fuses.First(x => x.Key.Value == highest).Key;
            f.Report(new("spec/value", Diagnostics.Severity.Error, $"output {highest} has a fuse, but the block has {written.Value} outputs", beyond.At));
        }

        return new()
        {
            Name = f.Key,
            Outputs = outputs?.Value ?? highest,
            Fuses = fuses,
            Style = f.Choice("style", "construction of its fuses", FuseStyles.Words, "the smallest that comes in that rating"),
            Rating = f.Amount<Amps>("rating", "what the block carries in all"),
        };
    }
}
