using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>A terminal by which gear is switched on.</summary>
public sealed record TurnOnInput
{
    public required TerminalShape Terminal { get; init; }

    /// <summary>What it takes, as written.</summary>
    public required Written<Amps>? Current { get; init; }

    /// <summary>
    /// How the device is woken; null where the terminal is all there is to it, and nobody asks whether something wakes it.
    /// </summary>
    public required SleepSettings? Sleep { get; init; }
}

/// <summary>How a device that sleeps is woken.</summary>
/// <param name="Setting">What it is set to wake on; null if nobody says.</param>
/// <param name="WakesOn">What it can wake on; empty if nobody says.</param>
public sealed record SleepSettings(Written<WakeMode>? Setting, ImmutableArray<Written<WakeMode>> WakesOn);

/// <summary>A terminal by which gear switches others on while it is awake.</summary>
public sealed record TurnOnOutput
{
    public required TerminalShape Terminal { get; init; }

    /// <summary>The supply terminal of the device from which it takes its volts.</summary>
    public required TerminalShape FedFrom { get; init; }

    /// <summary>The most that it supplies, as written.</summary>
    public required Written<Amps>? Limit { get; init; }
}
