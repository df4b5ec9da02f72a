using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A resistor that loads a source.</summary>
public sealed record LoadResistor : Gear
{
    public override string Kind => "load resistor";

    public override ImmutableArray<TerminalShape> Terminals => Channels == 2
        ? [Pair("left", TerminalRole.Speaker, TerminalFlow.In), Pair("right", TerminalRole.Speaker, TerminalFlow.In)]
        : [Node("1", TerminalRole.Speaker, TerminalFlow.In), Node("2", TerminalRole.Speaker, TerminalFlow.In)];

    public int Channels { get; init; } = 1;

    /// <summary>The pair or group it lies across, where no runs are written for it.</summary>
    public Written<string>? Across { get; init; }

    public Written<Ohms>? Resistance { get; init; }

    public Written<Watts>? Handles { get; init; }

    internal static LoadResistor Read(Fields f)
    {
        f.Require("resistance");
        return ReadFacts(f);
    }

    private static LoadResistor ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Channels = f.Count("channels", "one resistor, or a pair for left and right", "1", most: 2)?.Value ?? 1,
        Across = f.Text("across", "the pair or group it lies across, instead of runs"),
        Resistance = f.Amount<Ohms>("resistance", "its resistance"),
        Handles = f.Amount<Watts>("handles", "its power rating"),
    };
}
