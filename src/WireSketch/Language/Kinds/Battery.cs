using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A battery.</summary>
public sealed record Battery : Gear
{
    public override string Kind => "battery";

    protected override bool ComesCovered => true;

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.Out), Node("-", TerminalRole.Ground)];

    public Written<AmpHours>? Capacity { get; init; }

    public Written<Ohms>? Internal { get; init; }

    public Written<Chemistry>? Chemistry { get; init; }

    public Written<Volts>? Rest { get; init; }

    public Written<string>? Post { get; init; }

    internal static Battery Read(Fields f) => new()
    {
        Name = f.Key,
        Capacity = f.Amount<AmpHours>("capacity", "capacity at the 20 h rate", "60 Ah (common practice)"),
        Internal = f.Amount<Ohms>("internal", "internal resistance", "8 mohm for 60 Ah, in inverse proportion to the capacity (common practice)"),
        Chemistry = f.Choice("chemistry", "kind of cells", Chemistries.Words, "flooded"),
        Rest = f.Amount<Volts>("rest", "volts at rest, charged", "12.6 V; AGM and gel 12.8 V; lithium 13.2 V (common practice)"),
        Post = f.Text("post", "kind or size of its posts, for the terminals to buy"),
    };
}

/// <summary>Kind of a battery's cells.</summary>
public enum Chemistry
{
    Flooded,
    Agm,
    Gel,
    Lithium,
}

/// <summary>The words of <see cref="Chemistry"/>.</summary>
public static class Chemistries
{
    public static ChoiceWords<Chemistry> Words { get; } = new((Chemistry.Flooded, "flooded"), (Chemistry.Agm, "AGM"), (Chemistry.Gel, "gel"), (Chemistry.Lithium, "lithium"));
}
