using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A vehicle circuit that is live when the ignition or accessory switch says so.</summary>
public sealed record IgnitionSource : Gear
{
    public override string Kind => "ignition source";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("", TerminalRole.Supply, TerminalFlow.Out)];

    public Written<CircuitLive>? Live { get; init; }

    public Written<Volts>? Voltage { get; init; }

    public Written<Amps>? Limit { get; init; }

    internal static IgnitionSource Read(Fields f) => new()
    {
        Name = f.Key,
        Live = f.Choice("live", "when it is live", CircuitLives.Words, "accessory"),
        Voltage = f.Amount<Volts>("voltage", "its voltage", "the battery's"),
        Limit = f.Amount<Amps>("limit", "the most that may be taken from it", "0.5 A for waking (common practice)"),
    };
}

/// <summary>When a circuit of the vehicle is live.</summary>
public enum CircuitLive
{
    Constant,
    Accessory,
    Ignition,
    Start,
}

/// <summary>The words of <see cref="CircuitLive"/>.</summary>
public static class CircuitLives
{
    public static ChoiceWords<CircuitLive> Words { get; } = new((CircuitLive.Constant, "constant"), (CircuitLive.Accessory, "accessory"), (CircuitLive.Ignition, "ignition"), (CircuitLive.Start, "start"));
}
