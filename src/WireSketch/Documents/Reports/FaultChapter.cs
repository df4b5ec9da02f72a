using WireSketch.Documents.Lists;
using WireSketch.Electrical;
using WireSketch.Electrical.Faults;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Documents.Reports;

/// <summary>A dead short to the body at the ends of every conductor that a source can feed.</summary>
internal static class FaultChapter
{
    public static Chapter Of(InstalledSystem install) => new(
        "faults", "A dead short to the body",
        [
            "The supply network without its loads, shorted at one point after the other. At the far end wires are warm and alternators "
                + "give nothing: what must open the device. At the near end and behind the device wires are cold (20 C) and alternators "
                + "give their limit: what the device must break.",
            "R_all is the volts at the far end before the short over the current of the short; less what lies on the way there (R_w) it "
                + "leaves the battery inside with its way to the body, or less than that where several ways run beside each other.",
            "The device is the nearest fuse or breaker on the way. t_open is the longest time that its limits allow at that multiple of "
                + "its rating; beyond the last published point its I²t stays the same, so the time falls with the square of the current.",
            "A conductor stands W = k²·A² with the adiabatic equation of IEC 60364-5-54, for 5 s at the most; it begins at the "
                + "temperature of its insulation and may reach 160 C (insulation up to 105 C) or 250 C.",
            "Selective: the device before it is rated at least 1.6 times as high (IEC 60269; from memory).",
        ],
        [
            ReportBuilder.Bare("Q_Cu", "heat capacity of copper", Metal.Copper.Heat, "J/(C·mm3)", "IEC 60364-5-54"),
            ReportBuilder.Bare("β_Cu", "reciprocal of its temperature coefficient at 0 C", Metal.Copper.Beta, "C", "IEC 60364-5-54"),
            ReportBuilder.Bare("r_Cu", "its resistivity", Metal.Copper.PulseResistivity, "ohm·mm²/m", "IEC 60364-5-54, as rounded there"),
            .. install.Wiring.Conductors.Any(ConductorChapters.IsClad)
                ? new[]
                {
                    ReportBuilder.Bare(
                        "Q_CCA", "heat capacity of copper-clad aluminum", Metal.CopperCladAluminum.Heat, "J/(C·mm3)",
                        "that of aluminum, IEC 60364-5-54"),
                    ReportBuilder.Bare("β_CCA", "as for copper", Metal.CopperCladAluminum.Beta, "C", "that of aluminum, IEC 60364-5-54"),
                    ReportBuilder.Bare(
                        "r_CCA",
                        "its resistivity",
                        Metal.CopperCladAluminum.PulseResistivity,
                        "ohm·mm²/m",
                        "that of aluminum, IEC 60364-5-54"),
                }
                : [],
        ],
        [.. install.Answers.Faults.Select(f => Of(install, f))]);

    private static Calculation Of(InstalledSystem install, FaultResult f)
    {
        var c = f.Conductor;
        var metal = ConductorChapters.IsClad(c) ? "CCA" : "Cu";
        var full = install.Answers.State(SystemState.FullOutput);
        var way = f.Fed.Through()
            .Append(c)
            .Select(x => (x.Id, full.Resistances[x.Index] ?? new Ohms(0)))
            .Concat(f.Fed.Protections.Select(p => (p.Id, ConnectionProperties.Of(p).Ohms)));
        var w = new ReportBuilder().Each("R_w", "on the way from the source", way, "chapter Volts and amps: full output")
            .Taken("U0", "volts at the far end before the short", f.FarVolts, "the network without loads")
            .Taken("I_near", "short at the near end, cold", f.Near, "the network solved")
            .Taken("I_far", "short at the far end, warm", f.Far, "the network solved");
        if (f.Far.Value > 0)
        {
            w.Gives("R_all", "all that limits it", new Ohms(f.FarVolts.Value / f.Far.Value), "U0/I_far")
                .Gives(
                    "R_rest",
                    "beyond the way",
                    new Ohms((f.FarVolts.Value / f.Far.Value) - way.Sum(x => x.Item2.Value)),
                    "R_all − sum(R_w)");
        }

        w.Taken("A", "area", c.Wire.Size.Area, "chapter Resistance of the conductors")
            .Taken("t_i", "at the beginning", FaultFinder.Initial(c), "its insulation")
            .Taken("t_f", "at the end", FaultFinder.Final(c), "IEC 60364-5-54, by its insulation");
        if (f.Device is not { } device || device.Rating is not { } rating)
        {
            return Withstand(w, f, metal).Says(
                "device",
                "none",
                "no rated fuse or breaker stands between the source and it; rule supply/unfused looks at its length")
                .Of(c.Id);
        }

        var style = FuseStyleChoice.Of(install, device);
        var window = FuseTable.OpeningOf(
            device.Kind == ConnectionKind.Breaker ? null : FuseStyleChoice.StyleOf(install, device), f.DeviceAmpsAtFar / rating);
        w.Told("device", $"{device.Id}, {style}", "the nearest on the way").Taken("I_n", "its rating", rating, "chapter Fuses and breakers")
            .Taken("I_d", "through it, short at the far end, its source alone", f.DeviceAmpsAtFar, "the network solved")
            .Taken("I_b", "to break, short right behind it", f.DeviceAmpsAtNear, "the network solved");
        if (f.Breaking is { } breaking)
        {
            w.Taken(
                "I_max",
                "it can break",
                breaking,
                device.Breaking is null ? $"type data of {style} fuses" : device.At is { } at ? ReportBuilder.Place(at) : "the spec")
                .Gives("b", "share of that", new Share(f.DeviceAmpsAtNear / breaking), "I_b/I_max");
        }

        if (window.Beyond is { } last)
        {
            w.Number("m_p", "last published multiple", last.Percent / 100, "limits of opening time")
                .Taken("t_p", "opens there within", last.Most, Limits(window));
        }

        w.Gives("m", "multiple of the rating", f.DeviceAmpsAtFar / rating, "", "I_d/I_n");
        if (f.OpensWithin is not { } opens)
        {
            return Withstand(w, f, metal).Says("opens within", "no limit is published at so low a multiple", Limits(window)).Of(c.Id);
        }

        _ = window.Beyond is null
            ? w.Solved<Seconds>("t_open", "opens within", opens, Limits(window))
            : w.Gives("t_open", "opens within", opens, "t_p·(m_p/m)²");
        if (f.LetThrough is { } passes)
        {
            w.Gives("E", "I²t until then", passes, "A²s", "I_d²·t_open");
        }

        Withstand(w, f, metal);
        if (f.LetThrough is { } let)
        {
            w.Gives("e", "share of what the conductor stands", new Share(let / f.Withstand), "E/W");
        }

        return w.Says("selective", Selective(f), "ratings compared").Of(c.Id);
    }

    private static string Limits(OpeningWindow window) =>
        window.IsStandIn
            ? "limits of the large blade stand in, since none are published for it (common practice)"
            : "limits of opening time by ISO 8820-3 and type sheets that refer to it";

    private static ReportBuilder Withstand(ReportBuilder w, FaultResult f, string metal) =>
        w.Gives(
            "W",
            "the conductor stands",
            f.Withstand,
            "A²s",
            $"Q_{metal}·(β_{metal} + 20)/(r_{metal}/1000)·ln((β_{metal} + t_f)/(β_{metal} + t_i))·A²");

    private static string Selective(FaultResult f) => f.UpstreamOpensFirst is { } up
        ? $"no: {up.Id} of {up.Rating} may open first or together"
        : f.Fed.Protections.Length > 1 ? "yes" : "nothing before it";
}
