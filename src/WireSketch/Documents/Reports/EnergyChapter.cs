using WireSketch.Electrical;
using WireSketch.Electrical.Energy;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Documents.Reports;

/// <summary>Alternator, reserve and standby.</summary>
internal static class EnergyChapter
{
    public static Chapter Of(InstalledSystem install) => new(
        "energy", "Alternator, reserve and standby",
        [
            "Average demand: what each device takes in music, times its share of the day. What is left at speed and at idle: what the "
                + "sources give, less the vehicle's own load and the average demand.",
            $"Reserve and standby: usable charge over the current drawn, for the group of joined batteries that gives up first. Parked, "
                + $"the vehicle itself takes its rest-current ({Assume.RestCurrent.Words} where none is written, "
                + $"{Assume.RestCurrent.Basis}). Of a battery {Assume.Usable.Words} the capacity is usable, of lithium "
                + $"{Assume.UsableLithium}; what is left must still start the engine.",
        ],
        [],
        [Balance(install), .. Times(install)]);

    private static Calculation Balance(InstalledSystem install)
    {
        var (spec, energy) = (install.Spec, install.Answers.Energy);
        var vehicle = spec.Job.Vehicle;
        var alternator = install.Wiring.Sources.Select(s => s.Source).OfType<AlternatorSource>().FirstOrDefault();
        var w = new ReportBuilder().Given("I_b", "the vehicle's own load", vehicle.BaseLoad, Assume.BaseLoad)
            .Each(
                "I_d",
                "average of the devices in music",
                Average(install),
                "chapter Volts and amps: music, times duty or hours of the day")
            .Each(
                "I_p",
                "devices at full output",
                install.Answers.State(SystemState.FullOutput).Loads.Select(l => (l.Path.Gear.Id, l.Amps)).Where(l => l.Amps.Value != 0),
                "chapter Volts and amps: full output")
            .Gives("I_avg", "average demand", energy.AverageDemand, "sum(I_d)")
            .Gives("I_peak", "demand at full output", energy.PeakDemand, "sum(I_p)");
        if (energy is not { AlternatorAtSpeed: { } speed, AlternatorAtIdle: { } idle })
        {
            return w.Says("alternator", "unknown", "neither job.vehicle.alternator nor an alternator's output is written").Of("vehicle");
        }

        var output = alternator?.Output ?? vehicle.Alternator;
        w.Given("I_a", "alternator at speed", output!.Value)
            .Given(
                "I_i",
                "alternator at idle",
                alternator?.Idle ?? vehicle.IdleOutput,
                output.Value.Value * Assume.IdleOutput.Value.Value,
                Assume.IdleOutput.ToString())
            .Each(
                "I_o",
                "other sources, daily average",
                install.Wiring.Sources.Where(s => s.Source is ChargerSource)
                    .Select(s => (s.Id, Charger: (ChargerSource)s.Source))
                    .Select(c => (c.Id, (c.Charger.Current?.Value ?? new Amps(0)) * EnergyBalance.ShareOfTime(c.Charger))),
                "current times duty or hours of the day")
            .Gives("I_speed", "sources at speed", speed, "I_a + sum(I_o)").Gives("I_idle", "sources at idle", idle, "I_i + sum(I_o)")
            .Gives("m_s", "left at speed", speed - energy.BaseLoad - energy.AverageDemand, "I_speed − I_b − I_avg")
            .Gives("m_i", "left at idle", idle - energy.BaseLoad - energy.AverageDemand, "I_idle − I_b − I_avg");
        return w.Of("vehicle");
    }

    private static IEnumerable<(string, Amps)> Average(InstalledSystem install) => install.Answers.State(SystemState.Music).Loads
        .Select(l => (l.Path.Gear.Id, l.Amps * LoadModels.ShareOfTime(l.Path.Input.Takes))).Where(l => l.Item2.Value != 0);

    private static IEnumerable<Calculation> Times(InstalledSystem install)
    {
        var energy = install.Answers.Energy;
        yield return Time(energy.EngineOff, "with the engine off", "engine off");
        yield return Time(energy.Standing, "standing until it does not start", "standby");
    }

    private static Calculation Time(Discharge? discharge, string subject, string state)
    {
        if (discharge is null)
        {
            return new ReportBuilder().Says(
                "lasts",
                "no limit",
                "nothing is drawn as far as the spec says (standby currents that nobody states count as none), or more is charged than "
                    + "drawn")
                .Of(subject);
        }

        return new ReportBuilder().Each(
            "Q",
            "usable charge",
            discharge.Batteries.Select(b => (b.Id, Battery: (BatterySource)b.Source))
                .Select(b => (b.Id, EnergyBalance.CapacityOf(b.Battery) * EnergyBalance.Usable(b.Battery))),
            string.Join(", ", discharge.Batteries.Select(b => Capacity((BatterySource)b.Source))))
            .Each("I", "drawn on average", discharge.Drawn, $"chapter Volts and amps: {state}, times duty or hours of the day")
            .Gives("t", "lasts", discharge.Lasts, "sum(Q)/sum(I)·3600").Of(subject);
    }

    private static string Capacity(BatterySource b) =>
        $"{EnergyBalance.UsableOf(b).Words} of {EnergyBalance.CapacityOf(b)} "
        + $"({(b.Capacity is { } c ? ReportBuilder.Place(c.At) : $"default: {Assume.Capacity.Words}, {Assume.Capacity.Basis}")})";
}
