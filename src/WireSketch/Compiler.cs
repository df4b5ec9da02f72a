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
    /// <summary>Some error has not been accepted.</summary>
    public bool HasErrors => Findings.Any(f => f.Blocks);

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
        var read = SpecReader.Read(file, files);
        var wired = WiringResolver.Resolve(read.Value, SizeChoices.None);
        var slips = read.Findings.AddRange(wired.Findings);
        if (slips.Any(f => f.Severity == Severity.Error))
        {
            return new(file, read.Value, null, Finding.InOrder(slips));
        }

        var choices = AutoSizer.Size(read.Value);
        if (!ReferenceEquals(choices, SizeChoices.None))
        {
            wired = WiringResolver.Resolve(read.Value, choices);
        }

        var install = new InstalledSystem(read.Value, wired.Value, ElectricalSolver.Solve(wired.Value)) { Sizes = choices };
        var found = slips.AddRange(RuleBook.Check(install).Findings);
        return new(file, read.Value, install, Finding.InOrder(Suppressions.Apply(read.Value, found)));
    }
}
