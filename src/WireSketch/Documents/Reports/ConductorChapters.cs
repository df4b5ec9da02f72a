using System.Globalization;
using WireSketch.Documents.Lists;
using WireSketch.Electrical;
using WireSketch.Electrical.Conductors;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Documents.Reports;

/// <summary>Resistance of the conductors by themselves.</summary>
internal static class ConductorChapters
{
    public static Chapter Resistance(InstalledSystem install)
    {
        var lengths = CutLength.Of(install.Spec);
        return new(
            "conductors", "Resistance of the conductors",
            [
                "Area of an American size by its number n (1/0 is 0, 2/0 is −1): ASTM B258. A metric size is its area.",
                "R20 is the wire at 20 C, R the conductor at its temperature t at full output, with its terminations: two, or one for a "
                    + "link made up at the terminals.",
                "The temperature rises above that of the zone with the square of the current, so that the table's current brings the "
                    + "insulation from 30 C to what it is rated for (common practice). Speaker and signal wires are taken at the "
                    + "temperature of their zone.",
            ],
            [.. Constants(install)],
            [.. SameWorking.Merged(install.Answers.Conductors.Select(a => Of(install, a, lengths)))]);
    }

    private static IEnumerable<CalculationInput> Constants(InstalledSystem install)
    {
        yield return ReportBuilder.Bare("ρ_Cu", "resistivity of copper at 20 C", Metal.Copper.Resistivity, "ohm·mm²/m", "IEC 60028");
        yield return ReportBuilder.Bare("α_Cu", "its change with temperature", Metal.Copper.Alpha, "per C", "IEC 60028");
        if (install.Wiring.Conductors.Any(IsClad))
        {
            yield return ReportBuilder.Bare(
                "ρ_CCA",
                "resistivity of copper-clad aluminum at 20 C",
                Metal.CopperCladAluminum.Resistivity,
                "ohm·mm²/m",
                "ASTM B566, 10 % of copper, highest allowed");
            yield return ReportBuilder.Bare(
                "α_CCA",
                "its change with temperature",
                Metal.CopperCladAluminum.Alpha,
                "per C",
                "aluminum, of which nine tenths consist");
        }

        yield return ReportBuilder.Bare("lay", "strands are longer than the wire", ConductorProperties.Lay, "", "NEC chapter 9 Table 8");
        yield return Termination(install);
    }

    internal static CalculationInput Termination(InstalledSystem install) => install.Spec.Settings.Termination is { } written
        ? ReportBuilder.GivenInput("R_t", "one termination", written)
        : ReportBuilder.Constant("R_t", "one termination", Assume.Termination.Value, $"default: {Assume.Termination}");

    private static Calculation Of(InstalledSystem install, ConductorResult answer, CutLength lengths)
    {
        var c = answer.Conductor;
        var working = new ReportBuilder();
        if (c.Wire.Size.Awg is { } awg)
        {
            working.Number("n", "size, AWG", awg, SizeOrigin(install, c)).Taken("L", "length", c.Length, LengthOrigin(install, c, lengths));
        }
        else
        {
            working.Taken("A", "size", c.Wire.Size.Area, SizeOrigin(install, c))
                .Taken("L", "length", c.Length, LengthOrigin(install, c, lengths));
        }

        var (metal, solid) = (IsClad(c) ? "CCA" : "Cu", c.Wire.Strands == Stranding.Solid);
        working.Told(
            "strands",
            Strandings.Words[c.Wire.Strands],
            c.Wire.Type?.Strands is { } strands ? ReportBuilder.Place(strands.At) : "default: fine");
        var heats = Heats(install, answer);
        ZoneOf(working, install, c);
        if (heats)
        {
            InsulationOf(working, install, c)
                .Taken(
                    "I",
                    "current at full output",
                    Magnitude(install.Answers.State(SystemState.FullOutput).Amps[c.Index]),
                    "chapter Volts and amps: full output")
                .Taken("I_table", "current of the table", answer.TableAmpacity!.Value, "chapter What the conductors may carry");
        }

        if (c.Wire.Size.Awg is not null)
        {
            working.Gives("A", "area", c.Wire.Size.Area, "π/4·(0.127·92^((36 − n)/39))²");
        }

        working.Gives("R20", "wire at 20 C", answer.Resistance20, $"ρ_{metal}·L/A{(solid ? "" : "·lay")}")
            .Gives("t", "temperature", answer.Temperature, heats ? "t_a + (t_ins − 30)·min(3, I/I_table)²" : "t_a")
            .Gives(
                "R",
                "at work",
                answer.Resistance,
                $"R20·(1 + α_{metal}·(t − 20)) + {(c.IsJumper && c.Length.Value == 0 ? "1" : "2")}·R_t");
        return working.Of(c.Id);
    }

    /// <summary>Whether its own current warms it in this reckoning.</summary>
    private static bool Heats(InstalledSystem install, ConductorResult answer) =>
        answer.TableAmpacity is not null && install.Answers.State(SystemState.FullOutput).Resistances[answer.Conductor.Index] is not null;

    internal static bool IsClad(Conductor c) => c.Wire.Material == ConductorMaterial.Clad;

    internal static Amps Magnitude(Amps amps) => new(Math.Abs(amps.Value));

    internal static void ZoneOf(ReportBuilder working, InstalledSystem install, Conductor c)
    {
        var zone = install.Spec.Zones.FirstOrDefault(z => z.Id == c.ZoneId);
        if (zone?.Ambient is { } written)
        {
            working.Given("t_a", "ambient", written);
        }
        else
        {
            working.Assumed(
                "t_a",
                "ambient",
                zone?.AmbientOrDefault ?? Assume.Ambient.Value,
                zone is null ? $"{Assume.Ambient.Words}, no zone is known"
                    : $"{zone.Id}, {(zone.IsEngineBay ? $"{Assume.AmbientEngineBay.Words} as an engine bay" : Assume.Ambient.Words)}");
        }
    }

    internal static ReportBuilder InsulationOf(ReportBuilder working, InstalledSystem install, Conductor c)
    {
        var run = install.Wiring.RunsById[c.RunId];
        return c.Wire.InsulationIsAssumed ? working.Assumed("t_ins", "insulation", Assume.Insulation)
            : c.Wire.Type?.Insulation is { } i ? working.Given("t_ins", "insulation", i)
            : working.Taken("t_ins", "insulation", c.Wire.Insulation, run.Run.Wire is { } w ? ReportBuilder.Place(w.Words.At) : "the spec");
    }

    internal static string SizeOrigin(InstalledSystem install, Conductor c)
    {
        var wire = install.Wiring.RunsById[c.RunId].Run.Wire;
        return c.Wire.IsAuto ? "chosen: chapter Sizes that were chosen"
            : c.Wire.IsLinePair ? $"default: {Assume.SignalSize.Words} for core and shield of a line pair "
                + $"({Assume.SignalSize.Basis}){(wire is null ? "" : $", {ReportBuilder.Place(wire.Words.At)}")}"
            : c.Wire.Type?.Size is { } size ? ReportBuilder.Place(size.At)
            : wire?.Size is not null ? ReportBuilder.Place(wire.Words.At) : $"default: {Assume.Size.Words}, since the spec gives none";
    }

    /// <summary>Where a length comes from, and how it was divided.</summary>
    private static string LengthOrigin(InstalledSystem install, Conductor c, CutLength lengths)
    {
        var run = install.Wiring.RunsById[c.RunId];
        if (c.IsJumper)
        {
            return run.Run.Link is { } link && c.Length.Value > 0
                ? $"each {link.Words}, {ReportBuilder.Place(link.At)}"
                : "default: none, made up at the terminals";
        }

        var whole = RunLength.Origin(run, lengths);
        if (run.Holder is not { } holder || (c.From.Gear != holder && c.To.Gear != holder))
        {
            return whole;
        }

        var at = run.Run.Protection!.Distance is { } distance
            ? string.Create(CultureInfo.InvariantCulture, $"{distance.Words}, {ReportBuilder.Place(distance.At)}")
            : "none";
        return c.To.Gear == holder ? $"up to {holder.Id}: {at}" : $"{whole}, less what lies before {holder.Id} ({at})";
    }
}

/// <summary>Where the length of a run comes from.</summary>
internal static class RunLength
{
    public static string Origin(WiredRun run, CutLength lengths) =>
        run.Run.Length is { } written ? $"{written.Words}, {ReportBuilder.Place(written.At)}"
        : run.Length is { } known ? $"chapter Routes, {lengths.One(known)} in all"
        : $"default: {Assume.Length.Words}, since neither a length nor a path is given";
}
