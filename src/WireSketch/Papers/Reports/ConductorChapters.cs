using WireSketch.Electrical.Conductors;
using WireSketch.Language;
using WireSketch.Papers.Lists;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Papers.Reports;

/// <summary>Conductors by themselves: resistance and what they may carry.</summary>
internal static class ConductorChapters
{
    public static Chapter Resistance(Install install) => Resistance(install, CutLength.Of(install.Spec));

    private static Chapter Resistance(Install install, CutLength lengths) => new(
        "conductors", "Resistance of the conductors",
        [
            "Area of an AWG size n: A = π/4·d², d = 0.127 mm·92^((36−n)/39) (ASTM B258); a size in mm² as written.",
            $"At 20 C: R20 = ρ·L/A·lay, with ρ of copper {Number(Metal.Copper.Resistivity)} ohm·mm²/m (IEC 60028), of copper-clad aluminium {Number(Metal.CopperCladAluminium.Resistivity)} (ASTM B566), lay {Number(ConductorFacts.Lay)} for strands (NEC chapter 9 Table 8), 1 for solid wire.",
            $"At work: R = R20·(1 + α·(t − 20)) + terminations of {ConductorFacts.Termination} each (common practice), with α of copper {Number(Metal.Copper.Alpha)}; a link made up at the terminals has one termination, everything else two.",
            "Temperature: t = ambient + (insulation − 30 C)·(I/I_table)², I at full output (ambient of the zone; common practice).",
        ],
        [.. install.Answers.Conductors.Select(a => new Calculation(
            a.Conductor.Id, [.. Size(install, a.Conductor, lengths)],
            [Result.Of("area", a.Conductor.Wire.Size.Area), Result.Of("R20", a.Resistance20), Result.Of("temperature", a.Temperature), Result.Of("R", a.Resistance)]))]);

    public static Chapter Ampacity(Install install) => new(
        "ampacity", "What the conductors may carry",
        [
            "I_allowed = I_table·correction. Table by size and insulation: 33 CFR 183.425, Table 5. In an engine space its note 1; else, above 30 C, √((insulation − ambient)/(insulation − 30 C)) (form of NEC 310.15).",
            "Copper-clad aluminium: times the root of its conductivity against copper's, for equal heat.",
        ],
        [.. install.Answers.Conductors.Where(a => a.Conductor.Kind is RunKind.Supply or RunKind.Ground).Select(a => new Calculation(
            a.Conductor.Id,
            [
                Insulation(install, a.Conductor), new("zone", a.Conductor.ZoneId ?? "none", null, null, "zones of the two ends: the hotter one"),
                new("basis", a.AmpacityBasis, null, null, "table"),
            ],
            [Result.Of("I_table", a.TableAmpacity), Result.Of("correction", a.Correction), Result.Of("I_allowed", a.Ampacity)]))]);

    private static IEnumerable<Input> Size(Install install, Conductor c, CutLength lengths)
    {
        var run = install.Wiring.RunsById[c.RunId];
        var spec = install.Spec;
        var wire = run.Run.Wire?.Words;
        yield return new("size", c.Wire.SizeWords, c.Wire.Size.Area.Value, "mm2", wire is { } w ? Input.Place(spec, w.At) : "default");
        yield return new("material", c.Wire.Material == ConductorMaterial.Clad ? "copper-clad aluminium" : "copper", null, null, wire is { } m ? Input.Place(spec, m.At) : "default");
        yield return new(
            "length", Words(run, c, lengths), c.Length.Value, "m",
            c.IsJumper && run.Run.Link is { } link ? Input.Place(spec, link.At)
            : c.IsJumper ? "made up at the terminals"
            : run.Run.Length is { } length ? Part(c, run, Input.Place(spec, length.At))
            : run.LengthIsKnown ? $"paths {string.Join(", ", run.Run.Along.Select(a => a.Value))}" : "default: 3 m, since the spec gives none");
        yield return new("strands", c.Wire.Strands, null, null, c.Wire.Type?.Strands is { } strands ? Input.Place(spec, strands.At) : "default: fine");
    }

    private static string Words(WiredRun run, Conductor c, CutLength lengths) =>
        !c.IsJumper && run.Run.Length is { } written && written.Value == c.Length ? written.Words : lengths.One(c.Length);

    private static string Part(Conductor c, WiredRun run, string place) =>
        run.Holder is not null && (c.From.Gear == run.Holder || c.To.Gear == run.Holder) ? $"{place}, divided at the {run.Holder.Kind}" : place;

    private static Input Insulation(Install install, Conductor c) => new(
        "insulation", Quantity.Print(c.Wire.Insulation), c.Wire.Insulation.Value, "C",
        c.Wire.InsulationIsAssumed ? "default: 80 C (common practice)"
        : c.Wire.Type?.Insulation is { } i ? Input.Place(install.Spec, i.At)
        : install.Wiring.RunsById[c.RunId].Run.Wire is { } w ? Input.Place(install.Spec, w.Words.At) : "default");

    private static string Number(double value) => Quantity.Digits(value, 6);
}
