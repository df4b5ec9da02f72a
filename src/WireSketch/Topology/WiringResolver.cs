using WireSketch.Diagnostics;
using WireSketch.Language;

namespace WireSketch.Topology;

/// <summary>Finds what the names of a spec stand for, and makes the graph of terminals and conductors.</summary>
internal static class WiringResolver
{
    /// <summary>Resolves a spec. What cannot be found is a finding, and the run that names it has no conductors.</summary>
    /// <param name="spec">The spec.</param>
    /// <param name="choices">Sizes chosen for <c>auto</c>; where none is chosen yet, the thinnest of the table is taken.</param>
    public static Outcome<Wiring> Resolve(Spec spec, SizeChoices choices) => new WiringBuilder(spec, choices).Build();
}
