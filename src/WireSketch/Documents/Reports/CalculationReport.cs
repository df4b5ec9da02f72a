using System.Collections.Immutable;
using WireSketch.Installation;

namespace WireSketch.Documents.Reports;

/// <summary>Every result with its formula and what went into it, so that an inspector can follow it by hand.</summary>
/// <param name="Chapters">In the order in which one rests on another.</param>
public sealed record CalculationReport(ImmutableArray<Chapter> Chapters)
{
    public static CalculationReport From(InstalledSystem install) => new(
    [
        SizesChapter.Of(install), RouteChapter.Of(install), ConductorChapters.Resistance(install), AmpacityChapter.Of(install),
        SpeakerChapter.Of(install), DemandChapter.Of(install), .. OperatingChapters.Of(install),
        ProtectionChapters.Protection(install),
        FaultChapter.Of(install), SignalChapters.Levels(install), SignalChapters.Waking(install), SourceChapters.Loads(install),
        SourceChapters.Grounds(install), EnergyChapter.Of(install), CutChapter.Of(install), ReadingChapter.Of(install),
    ]);
}
