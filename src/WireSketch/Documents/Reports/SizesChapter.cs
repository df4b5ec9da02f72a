using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Documents.Reports;

/// <summary>What was chosen where the spec says <c>auto</c>.</summary>
internal static class SizesChapter
{
    public static Chapter Of(InstalledSystem install)
    {
        var sizes = install.Sizes;
        var settings = install.Spec.Settings.Sizes is { } s
            ? $"of the sizes in {s.Value} ({ReportBuilder.Place(s.At)})"
            : "of the sizes in the system of the file's first wire, else AWG";
        return new(
            "sizes", "Sizes that were chosen",
            [
                $"Where the spec says auto: all wires begin at the thinnest {settings} that their terminals take; as long as a rule is "
                    + "broken that a thicker wire mends, the run that wins most for the least copper grows by one size, over the whole "
                    + "network at once. A size thinner would break the rule that is named; for a rule that no size keeps, no copper is "
                    + "spent.",
                "A fuse that says auto has the lowest rating made that leaves a tenth to spare above the highest current of any state, "
                    + "and is not below what a device behind it has of its own, and outlasts the start of what it feeds; but no more "
                    + "than wire of a fixed size behind it carries.",
            ],
            [],
            [
                .. install.Wiring.Runs.Where(r => sizes.Wires.ContainsKey(r.Id)).Select(r => new ReportBuilder()
                    .Told("auto", r.Run.Wire!.Words.Words, ReportBuilder.Place(r.Run.Wire.Words.At))
                    .Told(
                        "decided by",
                        sizes.Reasons.GetValueOrDefault(r.Id, "the thinnest will do"),
                        "the rules, see findings and specs/reference/rules.md")
                    .Says("wire", sizes.Wires[r.Id].ToString(), "the choice").Of(r.Id)),
                .. install.Wiring.Runs.Where(r => sizes.Fuses.ContainsKey(r.Id)).Select(r => Fuse(install, r)),
            ]);
    }

    private static Calculation Fuse(InstalledSystem install, WiredRun run)
    {
        var highest = run.Conductors.Select(c => SourceReach.Highest(install, c) ?? (new Amps(0), SystemState.FullOutput)).ToArray();
        var (load, state) = highest.Length == 0 ? (new Amps(0), SystemState.FullOutput) : highest.MaxBy(h => h.Item1.Value);
        var link = FuseSizes.LinkOf(install.Wiring, run)!;
        var w = new ReportBuilder().Told("auto", "rating", ReportBuilder.Place(run.Run.Protection!.At))
            .Taken("I", "highest current of any state", load, $"chapter Volts and amps: {SystemStates.WordOf(state)}");
        var own = DeviceFuses.Largest(install, link);
        if (own is { } o)
        {
            w.Given("I_f", $"the own fuse of {o.Gear.Id}", o.Fuse);
        }

        return w.Gives("I_min", "at least", FuseSizes.Least(install, link, load), own is null ? "max(1, I/0.9)" : "max(1, I/0.9, I_f)")
            .Solved<Amps>(
                "I_n",
                "rating",
                install.Sizes.Fuses[run.Id],
                install.Sizes.FuseReasons.GetValueOrDefault(run.Id, "the next rating that is made"))
            .Of($"{run.Id} fuse");
    }
}
