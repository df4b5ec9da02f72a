using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Sheets;
using WireSketch.Electrical;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>The drawings of one install, and the arrangement behind them.</summary>
/// <param name="Scenes">The sheets in order.</param>
/// <param name="Arrangement">What a later drawing may stay close to; null if the system takes more than one sheet.</param>
public sealed record DrawingSet(ImmutableArray<Scene> Scenes, Arrangement? Arrangement)
{
    /// <summary>Draws an install.</summary>
    /// <param name="wiring">The system as it is wired.</param>
    /// <param name="answers">What was computed; null for a drawing without computed numbers.</param>
    /// <param name="findings">What was found, in any order.</param>
    /// <param name="options">For whom and how.</param>
    /// <returns>The sheets; the same for the same arguments on every system.</returns>
    public static DrawingSet Draw(Wiring wiring, ElectricalResults? answers, ImmutableArray<Finding> findings, DrawingOptions options)
    {
        ArgumentNullException.ThrowIfNull(wiring);
        ArgumentNullException.ThrowIfNull(options);
        return new DrawingSetBuilder(wiring, answers, findings, options).Draw();
    }
}
