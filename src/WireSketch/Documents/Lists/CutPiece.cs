using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Documents.Lists;

/// <summary>A piece of wire or cable to be cut.</summary>
/// <param name="Id">What its label says: the run's id; <c>P1-1</c> and <c>P1-2</c> before and after an inline device; <c>S1.link1</c>
/// between loads.</param>
/// <param name="RunId">Its run.</param>
/// <param name="Kind">What it carries.</param>
/// <param name="Pieces">How many such pieces; more than one where a run needs several signal cables side by side.</param>
/// <param name="Cores">Conductors in the piece.</param>
/// <param name="Wire">What it is made of.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Length">As drawn, without slack.</param>
/// <param name="Cut">As cut: slack added, then rounded up. Nothing for a link that is made up at the terminals.</param>
/// <param name="LengthIsKnown">False if the spec gives no length; then the lengths are a stand-in and must be measured.</param>
/// <param name="Remarks">What else the one who cuts it must know.</param>
/// <param name="Conductors">The conductors in it.</param>
public sealed record CutPiece(
    string Id, string RunId, RunKind Kind, int Pieces, int Cores, WireProperties Wire, string From, string To, Meters Length, Meters Cut,
    bool LengthIsKnown,
    ImmutableArray<string> Remarks, ImmutableArray<Conductor> Conductors)
{
    /// <summary>Made at the terminals of one device, from an offcut.</summary>
    public bool IsMadeUp => Cut.Value == 0;
}
