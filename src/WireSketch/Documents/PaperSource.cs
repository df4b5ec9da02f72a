using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Text;

namespace WireSketch.Documents;

/// <summary>What papers are written from.</summary>
/// <param name="File">The spec's file.</param>
/// <param name="Spec">What could be read of it.</param>
/// <param name="Install">The install; null if the spec could not be understood well enough to wire it.</param>
/// <param name="Findings">All findings, in order, accepted ones included.</param>
public sealed record PaperSource(SourceFile File, Spec Spec, InstalledSystem? Install, ImmutableArray<Finding> Findings);
