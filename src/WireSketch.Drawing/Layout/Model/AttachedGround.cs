namespace WireSketch.Drawing.Layout.Model;

/// <summary>A chassis point that hangs below its only partner. It takes part in nothing but its host's outline.</summary>
internal readonly record struct AttachedGround
{
    /// <summary>Its index in the graph.</summary>
    public required int Device { get; init; }

    /// <summary>The body it hangs below.</summary>
    public required int Host { get; init; }

    /// <summary>The host's terminal above it.</summary>
    public required int HostPort { get; init; }

    /// <summary>The wire between them.</summary>
    public required int Wire { get; init; }

    /// <summary>True if the wire starts at the host.</summary>
    public required bool FromHost { get; init; }

    /// <summary>Room needed left of the wire.</summary>
    public required int Left { get; init; }

    /// <summary>Room needed right of the wire.</summary>
    public required int Right { get; init; }

    /// <summary>Length of the wire.</summary>
    public required int Drop { get; init; }

    /// <summary>Height of the chassis point's box.</summary>
    public required int Height { get; init; }
}
