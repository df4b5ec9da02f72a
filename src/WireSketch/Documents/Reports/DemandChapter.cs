using WireSketch.Electrical.Energy;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Tables;

namespace WireSketch.Documents.Reports;

/// <summary>What every device takes in every state, before the wiring is looked at.</summary>
internal static class DemandChapter
{
    private static readonly Amps Nothing = new(0);

    public static Chapter Of(InstalledSystem install) => new(
        "demand", "What the devices take",
        [
            $"Amplifier: its output over its efficiency, as a constant power; in music (music, idle, engine off) {Assume.Music.Words} of that ({Assume.Music.Basis}), and never less than with no signal. What is stated in amperes counts at {Assume.Rated.Words}. Where some channel in use states no power for its load, the amplifier's own fuse bounds what it takes (common practice).",
            "Head unit and processor: a constant power. Lamp: a resistance. Motor and pump: a constant current. Everything else: a constant power, unless the spec says how it behaves. Asleep: a constant current.",
        ],
        [ReportBuilder.Constant("U_r", "volts at which amperes are stated", Assume.Rated.Value, $"default: {Assume.Rated}")],
        [.. install.Wiring.Loads.Select(l => Of(install, l.Gear))]);

    private static Calculation Of(InstalledSystem install, Gear gear)
    {
        var output = install.Answers.Channels.Where(c => ReferenceEquals(c.Gear, gear) && c.Power is not null).ToArray();
        var total = ChannelOutput.Of(gear, install.Answers.Channels);
        double In(SystemState state) => LoadModels.Of(gear, state, total).Size;
        var w = new ReportBuilder();
        switch (gear)
        {
            case Amplifier a:
                if (a.Supply.Current is { } stated)
                {
                    w.Given("I_st", "stated at full output", stated);
                }
                else
                {
                    w.Each("P_ch", "channels give", output.Select(c => (c.Channel, c.Power!.Value)), "chapter Loads and power of the channels")
                        .Given("η", "efficiency", a.Supply.Efficiency, LoadModels.EfficiencyOf(a), $"{Assume.EfficiencyClassD.Words} for class D, else {Assume.Efficiency}");
                }

                var full = a.Supply.Current is null ? "sum(P_ch)/η" : "I_st·U_r";
                if (LoadModels.BoundingFuse(a, total) is { } fuse)
                {
                    w.Given("I_f", "its own fuse", fuse);
                    full = $"max({full}, I_f·U_r)";
                }

                return w.Given("I_idle", "with no signal", a.Idle, Assume.AmplifierIdle)
                    .Given("I_s", "asleep", a.Standby, Nothing, "none")
                    .Gives("P_full", "full output", new Watts(In(SystemState.FullOutput)), $"max(I_idle·U_r, {full})")
                    .Gives("P_music", "music", new Watts(In(SystemState.Music)), $"max(I_idle·U_r, {full}/8)").Of(a.Id);
            case HeadUnit h:
                return w.Given("I_st", "draw", h.Current, Assume.HeadUnit).Given("I_s", "asleep", h.Standby, Nothing, "none")
                    .Gives("P", "awake", new Watts(In(SystemState.Music)), "I_st·U_r").Of(h.Id);
            case Processor p:
                return w.Given("I_st", "draw", p.Supply.Current, Assume.Processor).Given("I_s", "asleep", p.Standby, Nothing, "none")
                    .Gives("P", "awake", new Watts(In(SystemState.Music)), "I_st·U_r").Of(p.Id);
            case LevelAdapter l:
                return w.Given("I", "draw", l.Current, Assume.LevelAdapter).Says("behaves as", "a current; nothing asleep", "kind of device").Of(l.Id);
            case Relay r:
                return (r.CoilResistance is { } coil ? w.Given("R_c", "coil", coil) : w.Given("I_c", "coil", r.CoilCurrent, Assume.RelayCoil))
                    .Gives("R", "a resistance; nothing asleep", new Ohms(In(SystemState.Music)), r.CoilResistance is null ? "U_r/I_c" : "R_c").Of(r.Id);
            case Load l:
                return OfLoad(w, l);
            default:
                return w.Says("takes", "nothing", "kind of device").Of(gear.Id);
        }
    }

    private static Calculation OfLoad(ReportBuilder w, Load l)
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
            return w.Says("takes", "nothing", "the spec states no draw").Of(l.Id);
        }

        w.Given("U_st", "rated volts", l.Rated, Assume.Rated).Told("behaves as", DrawLaws.Words[LoadModels.Behavior(l)], l.Behaves is { } b ? ReportBuilder.Place(b.At) : "default: resistance for a lamp, current for a motor or pump, else power");
        if (l.Facts.AlwaysLive)
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
        }).Of(l.Id);
    }
}
