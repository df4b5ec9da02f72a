using System.Collections.Immutable;

namespace WireSketch.Diagnostics;

/// <summary>What a stage gives: its value, as far as it could be understood, and its findings. Always both.</summary>
public sealed record Outcome<T>(T Value, ImmutableArray<Finding> Findings)
{
    /// <summary>Hands the value to the next stage and appends that stage's findings.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next)
    {
        var after = next(Value);
        return new(after.Value, [.. Findings, .. after.Findings]);
    }
}
