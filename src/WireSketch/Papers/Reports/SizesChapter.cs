using WireSketch.Electrical;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Topology;

namespace WireSketch.Papers.Reports;

/// <summary>What was chosen where the spec says <c>auto</c>.</summary>
internal static class SizesChapter
{
    public static Chapter Of(Install install)
    {
        var sizes = install.Sizes;
        var settings = install.Spec.Settings.Sizes is { } s ? $"of the sizes in {s.Value} ({Working.Place(s.At)})" : "of the sizes in the system of the file's first wire, else AWG";
        return new(
            "sizes", "Sizes that were chosen",
            [
                $"Where the spec says auto: all wires begin at the thinnest {settings}; as long as a rule is broken that a thicker wire mends, the run that wins most for the least copper grows by one size, over the whole network at once. The rule that made a wire grow to its last size is named.",
                "A fuse that says auto has the lowest rating made that leaves a tenth to spare above the current at full output, and that outlasts the start of what it feeds.",
            ],
            [],
            [
                .. install.Wiring.Runs.Where(r => sizes.Wires.ContainsKey(r.Id)).Select(r => new Working()
                    .Told("auto", r.Run.Wire!.Words.Words, Working.Place(r.Run.Wire.Words.At)).Told("decided by", sizes.Reasons.GetValueOrDefault(r.Id + " wire", "the thinnest will do"), "the rules, see findings and specs/reference/rules.md")
                    .Says("wire", sizes.Wires[r.Id].ToString(), "the choice").Of(r.Id)),
                .. install.Wiring.Runs.Where(r => sizes.Fuses.ContainsKey(r.Id)).Select(r => Fuse(install, r)),
            ]);
    }

    private static Calculation Fuse(Install install, WiredRun run)
    {
        var full = install.Answers.State(SystemState.FullOutput);
        var load = new Amps(run.Conductors.Select(c => Math.Abs(full.Amps[c.Index].Value)).DefaultIfEmpty(0).Max());
        return new Working().Told("auto", "rating", Working.Place(run.Run.Protection!.At)).Taken("I", "current at full output", load, "chapter Volts and amps: full output")
            .Gives("I_min", "at least", new Amps(Math.Max(1, load.Value / 0.9)), "max(1, I/0.9)").Solved<Amps>("I_n", "rating", install.Sizes.Fuses[run.Id], "the next rating that is made and outlasts the start of what it feeds").Of($"{run.Id} fuse");
    }
}
