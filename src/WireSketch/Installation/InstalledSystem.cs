using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>An install as the rules see it: what was written, how it is wired, and what was computed.</summary>
public sealed record InstalledSystem(Spec Spec, Wiring Wiring, ElectricalResults Answers)
{
    /// <summary>A source's plus is wired straight to the body: then no operating point means anything until that is mended.</summary>
    internal bool IsShorted { get; } = SourceReach.IsShorted(Wiring);

    /// <summary>What was chosen where the spec says <c>auto</c>, and which rule decided.</summary>
    public SizeChoices Sizes { get; init; } = SizeChoices.None;
}
