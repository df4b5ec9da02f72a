using System.Globalization;
using WireSketch.Electrical.Energy;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Documents.Reports;

/// <summary>What every device takes in every state, before the wiring is looked at.</summary>
internal static class DemandChapter
{
    private static readonly Amps Nothing = new(0);

    public static Chapter Of(InstalledSystem install) => new(
        "demand", "What the devices take",
        [
            $"Amplifier: its output over its efficiency, as a constant power; in music (music, idle, engine off) {Assume.Music.Words} "
                + $"of that ({Assume.Music.Basis}), and never less than with no signal. What is stated in amperes counts at "
                + $"{Assume.Rated.Words}. Where some channel in use states no power for its load, the amplifier's own fuse bounds what "
                + "it takes (common practice).",
            "Head unit and processor: a constant power. Lamp: a resistance. Motor and pump: a constant current. Everything else: a "
                + "constant power, unless the spec says how it behaves. Asleep: a constant current.",
        ],
        [ReportBuilder.Constant("U_r", "volts at which amperes are stated", Assume.Rated.Value, $"default: {Assume.Rated}")],
        [.. install.Wiring.Loads.Select(l => Of(install, l))]);

    private static Calculation Of(InstalledSystem install, LoadPath path)
    {
        var (gear, takes) = (path.Gear, path.Input.Takes);
        var output = install.Answers.Channels.Where(c => ReferenceEquals(c.Gear, gear) && c.Power is not null).ToArray();
        var total = ChannelOutput.Of(gear, install.Answers.Channels);
        double In(SystemState state) => LoadModels.Of(takes, state, total).Size;
        var w = new ReportBuilder();
        switch (takes)
        {
            case OutputDraw a:
                if (a.Current is { } stated)
                {
                    w.Given("I_st", "stated at full output", stated);
                }
                else
                {
                    w.Each(
                        "P_ch",
                        "channels give",
                        output.Select(c => (c.Channel, c.Power!.Value)),
                        "chapter Loads and power of the channels")
                        .Given(
                            "η",
                            "efficiency",
                            a.Efficiency,
                            LoadModels.EfficiencyOf(a),
                            $"{Assume.EfficiencyClassD.Words} for class D, else {Assume.Efficiency}");
                }

                var full = a.Current is null ? "sum(P_ch)/η" : "I_st·U_r";
                if (LoadModels.BoundingFuse(a, total) is { } fuse)
                {
                    w.Given("I_f", "its own fuse", fuse);
                    full = $"max({full}, I_f·U_r)";
                }

                return w.Given("I_idle", "with no signal", a.Idle, Assume.AmplifierIdle)
                    .Given("I_s", "asleep", a.Standby, Nothing, "none")
                    .Gives("P_full", "full output", new Watts(In(SystemState.FullOutput)), $"max(I_idle·U_r, {full})")
                    .Gives("P_music", "music", new Watts(In(SystemState.Music)), $"max(I_idle·U_r, {full}/8)").Of(gear.Id);
            case ElectronicsDraw e:
                return w.Given(
                    "I_st",
                    "draw",
                    e.Current,
                    e.Usual,
                    string.Create(CultureInfo.InvariantCulture, $"{e.Usual.Value} A (common practice)"))
                    .Given("I_s", "asleep", e.Standby, Nothing, "none")
                    .Gives("P", "awake", new Watts(In(SystemState.Music)), "I_st·U_r").Of(gear.Id);
            case SmallCircuitDraw s:
                return w.Given(
                    "I",
                    "draw",
                    s.Current,
                    s.Usual,
                    string.Create(CultureInfo.InvariantCulture, $"{s.Usual.Value} A (common practice)"))
                    .Says("behaves as", "a current; nothing asleep", "kind of device")
                    .Of(gear.Id);
            case CoilDraw r:
                return (r.Resistance is { } coil ? w.Given("R_c", "coil", coil) : w.Given("I_c", "coil", r.Current, Assume.RelayCoil))
                    .Gives("R", "a resistance; nothing asleep", new Ohms(In(SystemState.Music)), r.Resistance is null ? "U_r/I_c" : "R_c")
                    .Of(gear.Id);
            case ApplianceDraw l:
                return OfAppliance(w, gear, l);
            default:
                return w.Says("takes", "nothing", "kind of device").Of(gear.Id);
        }
    }

    private static Calculation OfAppliance(ReportBuilder w, Gear gear, ApplianceDraw l)
    {
        var watts = "";
        if (l.Power is { } power)
        {
            w.Given("P_st", "stated", power);
            watts = "P_st";
        }
        else if (l.Current is { } current)
        {
            w.Given("I_st", "stated", current);
            watts = "I_st·U_st";
        }
        else if (l.Resistance is { } ohms)
        {
            w.Given("R_st", "stated", ohms);
            watts = "U_st²/R_st";
        }
        else
        {
            return w.Says("takes", "nothing", "the spec states no draw").Of(gear.Id);
        }

        w.Given("U_st", "rated volts", l.Rated, Assume.Rated)
            .Told(
                "behaves as",
                DrawLaws.Words[l.Law],
                l.WrittenLaw is { } b
                    ? ReportBuilder.Place(b.At)
                    : "default: resistance for a lamp, current for a motor or pump, else power");
        if (l.AlwaysLive)
        {
            w.Told("asleep", "as awake", "always-live");
        }
        else
        {
            w.Given("I_s", "asleep", l.Standby, Nothing, "none");
        }

        var draw = LoadModels.Of(l, SystemState.Music, new(new(0), true));
        return (draw.Kind switch
        {
            LoadModelKind.Resistance => w.Gives("R", "a resistance", new Ohms(draw.Size), $"U_st²/({watts})"),
            LoadModelKind.Current => w.Gives("I", "a current", new Amps(draw.Size), $"({watts})/U_st"),
            _ => w.Gives("P", "a power", new Watts(draw.Size), watts),
        }).Of(gear.Id);
    }
}
