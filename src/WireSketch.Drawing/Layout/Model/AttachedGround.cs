namespace WireSketch.Drawing.Layout.Model;

/// <summary>A chassis point that hangs below its only partner. It takes part in nothing but its host's outline.</summary>
/// <param name="Device">Its index in the graph.</param>
/// <param name="Host">The body it hangs below.</param>
/// <param name="HostPort">The host's terminal above it.</param>
/// <param name="Wire">The wire between them.</param>
/// <param name="FromHost">True if the wire starts at the host.</param>
/// <param name="Left">Room needed left of the wire.</param>
/// <param name="Right">Room needed right of the wire.</param>
/// <param name="Drop">Length of the wire.</param>
/// <param name="Height">Height of the chassis point's box.</param>
internal readonly record struct AttachedGround(
    int Device, int Host, int HostPort, int Wire, bool FromHost, int Left, int Right, int Drop, int Height);
