using WireSketch.Drawing.Layout;
using WireSketch.Language;

namespace WireSketch.Drawing.Sheets;

/// <summary>For whom a drawing is made.</summary>
public enum Audience
{
    /// <summary>Everything that one needs to build, check and mend it.</summary>
    Technician,

    /// <summary>What is where and what it does, in plain words.</summary>
    Customer,
}

/// <summary>The tints of a drawing.</summary>
public enum Theme
{
    /// <summary>Dark on white, for paper.</summary>
    Print,

    /// <summary>Light on dark, for screens.</summary>
    Dark,
}

/// <summary>How to draw an install.</summary>
public sealed record DrawingOptions
{
    public Audience Audience { get; init; }

    /// <summary>The state whose volts and amps are shown.</summary>
    public SystemState State { get; init; } = SystemState.FullOutput;

    public Theme Theme { get; init; }

    /// <summary>What the colors of supply and ground wires tell.</summary>
    public LoadColoring Heat { get; init; }

    /// <summary>letter, A4, A3 or tabloid; null for what the spec's settings say.</summary>
    public SheetSize? Paper { get; init; }

    /// <summary>Whether sheets stand upright; null for what the spec's settings say.</summary>
    public bool? Upright { get; init; }

    /// <summary>Share of the usual search effort for a good layout; 1 is usual.</summary>
    public double Effort { get; init; } = 1;

    /// <summary>Arrangement of an earlier drawing to stay close to.</summary>
    public Arrangement? Previous { get; init; }
}
