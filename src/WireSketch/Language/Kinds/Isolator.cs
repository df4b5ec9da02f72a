using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>Joins two batteries while charging and parts them otherwise.</summary>
public sealed record Isolator : Gear
{
    public override string Kind => "isolator";

    protected override bool ComesCovered => true;

    public override ImmutableArray<TerminalShape> Terminals { get; } =
        [Node("main", TerminalRole.Supply), Node("second", TerminalRole.Supply), Node("-", TerminalRole.Ground)];

    public Written<IsolatorType>? Type { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<Volts>? Drop { get; init; }

    public ImmutableArray<Written<SystemState>> Closed { get; init; } = [];

    internal static Isolator Read(Fields f) => new()
    {
        Name = f.Key,
        Type = f.Choice("type", "how it works", IsolatorTypes.Words, "relay"),
        Rating = f.Amount<Amps>("rating", "what it carries"),
        Drop = f.Amount<Volts>("drop", "volts lost across it", "0.7 V for a diode, else none", zero: true),
        Closed = f.Choices("closed", "states in which it joins the batteries", SystemStates.Words),
    };
}

/// <summary>How an isolator works.</summary>
public enum IsolatorType
{
    Relay,
    Diode,
    VoltageSensing,
}

/// <summary>The words of <see cref="IsolatorType"/>.</summary>
public static class IsolatorTypes
{
    public static ChoiceWords<IsolatorType> Words { get; } = new((IsolatorType.Relay, "relay"), (IsolatorType.Diode, "diode"), (IsolatorType.VoltageSensing, "voltage sensing"));
}
