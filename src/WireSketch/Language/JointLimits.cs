using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>What may be put on gear that joins wires of others: a block, a bar, a plug. Null where its maker does not say.</summary>
public sealed record JointLimits
{
    /// <summary>It joins no wires, or nothing limits what is put on it but the fuses and contacts of its joins.</summary>
    public static JointLimits None { get; } = new();

    /// <summary>The cable that it takes.</summary>
    public Written<Range<WireSize>>? Fits { get; init; }

    /// <summary>The most wires that it takes.</summary>
    public Written<int>? Lugs { get; init; }

    /// <summary>What it carries in all.</summary>
    public Written<Amps>? Whole { get; init; }

    /// <summary>What each of its terminals carries.</summary>
    public Written<Amps>? Each { get; init; }
}

/// <summary>How the live studs of gear come from its maker.</summary>
public enum StudCover
{
    /// <summary>Under a cover or boots.</summary>
    Covered,

    /// <summary>Open, until somebody covers them.</summary>
    Open,

    /// <summary>It has none that stay live for others: what it has is its own supply, a ground, a blade or a lead.</summary>
    NoneOpen,
}
