using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Drawing.Sheets;

/// <summary>What the color of supply and ground wires tells, on request.</summary>
public enum LoadColoring
{
    /// <summary>Wires have their own colors.</summary>
    None,

    /// <summary>Volts lost in each run, as a share of the source's.</summary>
    Drop,

    /// <summary>Current of each run, as a share of what its conductor may carry.</summary>
    Load,
}

/// <summary>The steps of a heat scale.</summary>
internal static class ColorScale
{
    /// <summary>Where each step but the first begins.</summary>
    public static ImmutableArray<Share> Bounds(LoadColoring heat) => heat == LoadColoring.Drop
        ? [Share.FromPercent(0.5), Share.FromPercent(1), Share.FromPercent(2), Share.FromPercent(3)]
        : [Share.FromPercent(25), Share.FromPercent(50), Share.FromPercent(75), Share.FromPercent(100)];

    /// <summary>The step of a value, from 0.</summary>
    public static int StepOf(LoadColoring heat, Share value) => Bounds(heat).Count(b => value >= b);

    /// <summary>A step in words: <c>25 % to 50 %</c>.</summary>
    public static string Words(LoadColoring heat, int step)
    {
        var bounds = Bounds(heat);
        return step == 0 ? $"under {bounds[0]}"
            : step == bounds.Length ? $"{bounds[^1]} and more"
            : $"{bounds[step - 1]} to {bounds[step]}";
    }

    /// <summary>What it shows, for the head of a sheet.</summary>
    public static string Title(LoadColoring heat) =>
        heat == LoadColoring.Drop ? "colors show the volts lost in each run" : "colors show the current over what the conductor may carry";
}
