using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A lamp, motor, pump, fridge, inverter or other load.</summary>
public sealed record Load : Gear
{
    /// <summary>The kinds of load that the language knows.</summary>
    public static ImmutableArray<string> KindWords { get; } = ["lamp", "motor", "pump", "fridge", "inverter", "general load"];

    public override string Kind => KindWord;

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.In), Node("-", TerminalRole.Ground)];

    public required string KindWord { get; init; }

    public Written<Watts>? Power { get; init; }

    public Written<Amps>? Current { get; init; }

    public Written<Ohms>? Resistance { get; init; }

    /// <summary>The voltage at which it takes that.</summary>
    public Written<Volts>? Rated { get; init; }

    public Written<DrawLaw>? Behaves { get; init; }

    public Written<Amps>? Surge { get; init; }

    public Written<Share>? Duty { get; init; }

    public Written<Seconds>? Hours { get; init; }

    public Written<Volts>? Lowest { get; init; }

    public bool Critical { get; init; }

    public Written<Amps>? Standby { get; init; }

    internal static Load Read(Fields f, string kind)
    {
        f.Choose(needed: true, "power", "current", "resistance");
        f.Choose(needed: false, "duty", "hours");
        return ReadFacts(f, kind);
    }

    private static Load ReadFacts(Fields f, string kind) => new()
    {
        Name = f.Key,
        KindWord = kind,
        Power = f.Amount<Watts>("power", "what it takes at its rated voltage"),
        Current = f.Amount<Amps>("current", "what it takes at its rated voltage"),
        Resistance = f.Amount<Ohms>("resistance", "its resistance"),
        Rated = f.Amount<Volts>("rated", "the voltage at which it takes that", "12 V"),
        Behaves = f.Choice("behaves", "how its draw follows the voltage", DrawLaws.Words, "resistance for a lamp, current for a motor or pump, else power"),
        Surge = f.Amount<Amps>("surge", "current for a moment when it starts, which its fuse must outlast"),
        Duty = f.Amount<Share>("duty", "share of the time it runs", zero: true),
        Hours = f.Amount<Seconds>("hours", "hours a day it runs", zero: true),
        Lowest = f.Amount<Volts>("lowest", "the voltage below which it stops"),
        Critical = f.Flag("critical", "held to the tighter limit of voltage drop", "false")?.Value ?? false,
        Standby = f.Amount<Amps>("standby", "draw while asleep", zero: true),
    };
}

/// <summary>What of a load's draw stays the same as the voltage changes.</summary>
public enum DrawLaw
{
    Power,
    Current,
    Resistance,
}

/// <summary>The words of <see cref="DrawLaw"/>.</summary>
public static class DrawLaws
{
    public static ChoiceWords<DrawLaw> Words { get; } = new((DrawLaw.Power, "power"), (DrawLaw.Current, "current"), (DrawLaw.Resistance, "resistance"));
}
