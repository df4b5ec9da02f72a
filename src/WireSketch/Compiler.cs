using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Documents;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Rules;
using WireSketch.Sizing;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch;

/// <summary>What compiling a spec gives.</summary>
/// <param name="File">The spec's file.</param>
/// <param name="Spec">What could be read of it.</param>
/// <param name="Install">The install; null if the spec could not be understood well enough to wire it.</param>
/// <param name="Findings">All findings, in order, accepted ones included.</param>
public sealed record Compilation(SourceFile File, Spec Spec, InstalledSystem? Install, ImmutableArray<Finding> Findings)
{
    /// <summary>What its papers are written from.</summary>
    public PaperSource ForPapers => new(File, Spec, Install, Findings);
}

/// <summary>The whole pipeline: text, spec, wiring, answers, findings.</summary>
public static class Compiler
{
    /// <summary>
    /// Compiles a spec. Never throws for what is written in it. Where reading or wiring it finds errors, the rules are not asked:
    /// what they would say of half a system would mislead.
    /// </summary>
    /// <param name="file">The spec.</param>
    /// <param name="files">The door to the files it uses.</param>
    public static Compilation Compile(SourceFile file, ISpecFiles files)
    {
        var (wiring, mistakes) = SpecReader.Read(file, files).Then(spec => WiringResolver.Resolve(spec, SizeChoices.None));
        var spec = wiring.Spec;
        if (mistakes.Any(f => f.Severity == Severity.Error))
        {
            return new(file, spec, null, Finding.InOrder(mistakes));
        }

        var choices = AutoSizer.Size(spec);
        if (!ReferenceEquals(choices, SizeChoices.None))
        {
            wiring = WiringResolver.Resolve(spec, choices).Value;
        }

        var install = new InstalledSystem(spec, wiring, ElectricalSolver.Solve(wiring)) { Sizes = choices };
        return new(file, spec, install, Suppressions.Apply(spec, mistakes.AddRange(RuleBook.Check(install).Findings)));
    }
}
