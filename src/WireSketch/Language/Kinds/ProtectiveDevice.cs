using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Tables;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A fuse or circuit breaker that stands by itself.</summary>
public sealed record ProtectiveDevice : Gear
{
    public override string Kind => Breaker ? "breaker" : "fuse";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("in", TerminalRole.Supply, TerminalFlow.In), Node("out", TerminalRole.Supply, TerminalFlow.Out)];

    public bool Breaker { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<FuseStyle>? Style { get; init; }

    public Written<Amps>? Breaking { get; init; }

    /// <summary>Breakers only.</summary>
    public Written<BreakerReset>? Reset { get; init; }

    internal static ProtectiveDevice Read(Fields f, bool breaker) => new()
    {
        Name = f.Key,
        Breaker = breaker,
        Rating = f.Amount<Amps>("rating", "rated current"),
        Style = breaker ? null : f.Choice("style", "construction of the fuse", FuseStyles.Words, "the smallest that comes in that rating"),
        Breaking = f.Amount<Amps>("breaking", "the highest current it can break"),
        Reset = breaker ? f.Choice("reset", "how it is reset", BreakerResets.Words, "manual") : null,
    };
}

/// <summary>How a circuit breaker is closed again.</summary>
public enum BreakerReset
{
    Manual,
    Automatic,
}

/// <summary>The words of <see cref="BreakerReset"/>.</summary>
public static class BreakerResets
{
    public static ChoiceWords<BreakerReset> Words { get; } = new((BreakerReset.Manual, "manual"), (BreakerReset.Automatic, "automatic"));
}
