using WireSketch.Electrical;
using WireSketch.Electrical.Conductors;
using WireSketch.Installation;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Documents.Reports;

/// <summary>What conductors may carry.</summary>
internal static class AmpacityChapter
{
    public static Chapter Of(InstalledSystem install) => new(
        "ampacity", "What the conductors may carry",
        [
            "Table by size and insulation: 33 CFR 183.425, Table 5; an insulation between two columns counts as the cooler one, a size "
                + "between two rows lies between their currents in proportion on logarithmic scales. It is written for boats and taken "
                + "here because it is public and made for 12 V.",
            $"In an engine space its note 1 applies, and not the ambient as well. Elsewhere, above 30 C, the root of the temperature "
                + $"rise that is left (form of NEC 310.15). Copper-clad aluminum: the root of its conductivity against copper's, for "
                + $"equal heat. Its note 2 for bundles ({AmpacityTable.BundleFactor(3)} for 3 conductors, "
                + $"{AmpacityTable.BundleFactor(4)} from 4, {AmpacityTable.BundleFactor(7)} from 7, {AmpacityTable.BundleFactor(25)} "
                + "from 25) is law from 50 V on and is not applied below that.",
        ],
        install.Wiring.Conductors.Any(ConductorChapters.IsClad)
            ? [
                ReportBuilder.Bare(
                    "c_CCA",
                    "conductivity of copper-clad aluminum against copper's",
                    ConductorProperties.CladConductivity,
                    "",
                    "ASTM B566")
            ]
            : [],
        [
            .. SameWorking.Merged(install.Answers.Conductors.Where(a => a.Conductor.Kind is RunKind.Supply or RunKind.Ground)
                .Select(a => Of(install, a)))
        ]);

    private static Calculation Of(InstalledSystem install, ConductorResult answer)
    {
        var c = answer.Conductor;
        var working = new ReportBuilder().Told("size", c.Wire.SizeWords, ConductorChapters.SizeOrigin(install, c));
        ConductorChapters.InsulationOf(working, install, c);
        if (answer is not { TableAmpacity: { } table, Ampacity: { } allowed })
        {
            return working.Says("allowed", "unknown", "the size lies outside the table").Of(c.Id);
        }

        var column = $"33 CFR 183.425, Table 5, column {AmpacityTable.ColumnFor(c.Wire.Insulation)}";
        var around = AmpacityTable.Around(c.Wire.Size, c.Wire.Insulation);
        if (around is { } rows)
        {
            working.Taken("A", "size", c.Wire.Size.Area, ConductorChapters.SizeOrigin(install, c))
                .Taken("A1", "row below", rows.Below.Area, $"{rows.Below}")
                .Taken("I1", "its current", rows.BelowAmps, $"{column}, {rows.Below}")
                .Taken("A2", "row above", rows.Above.Area, $"{rows.Above}")
                .Taken("I2", "its current", rows.AboveAmps, $"{column}, {rows.Above}");
        }
        else
        {
            working.Taken("I_table", "current of the table", table, $"{column}, {c.Wire.SizeWords}");
        }

        var clad = ConductorChapters.IsClad(c) ? "·√(c_CCA)" : "";
        var isEngineBay = install.Spec.Zones.FirstOrDefault(z => z.Id == c.ZoneId) is { IsEngineBay: true };
        if (isEngineBay)
        {
            working.Taken(
                "k_e",
                "engine space",
                AmpacityTable.EngineSpaceFactor(c.Wire.Insulation),
                $"33 CFR 183.425, note 1, zone {c.ZoneId}");
        }
        else
        {
            ConductorChapters.ZoneOf(working, install, c);
        }

        if (around is not null)
        {
            working.Gives("I_table", "current of the table", table, "I1·(I2/I1)^(ln(A/A1)/ln(A2/A1))");
        }

        return working
            .Gives("k", "correction", answer.Correction, isEngineBay ? "k_e" + clad : "√(min(1, (t_ins − t_a)/(t_ins − 30)))" + clad)
            .Gives("I_allowed", "allowed", allowed, "I_table·k").Of(c.Id);
    }
}
