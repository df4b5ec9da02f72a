using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>Solar, shore or DC-DC charger.</summary>
public sealed record GeneralSource : Gear
{
    public override string Kind => "general source";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.Out), Node("-", TerminalRole.Ground)];

    public Written<Volts>? Voltage { get; init; }

    public Written<Amps>? Current { get; init; }

    public Written<Share>? Duty { get; init; }

    public Written<Seconds>? Hours { get; init; }

    internal static GeneralSource Read(Fields f)
    {
        f.Choose(needed: false, "duty", "hours");
        return ReadFacts(f);
    }

    private static GeneralSource ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Voltage = f.Amount<Volts>("voltage", "the voltage it regulates to", "14.2 V"),
        Current = f.Amount<Amps>("current", "the most it gives"),
        Duty = f.Amount<Share>("duty", "share of the time it gives that", zero: true),
        Hours = f.Amount<Seconds>("hours", "hours a day it gives that", zero: true),
    };
}
