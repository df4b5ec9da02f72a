using WireSketch.Electrical.Energy;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Rules;

namespace WireSketch.Papers.Reports;

/// <summary>Alternator, reserve and standby.</summary>
internal static class EnergyChapter
{
    public static Chapter Of(Install install)
    {
        var (spec, energy) = (install.Spec, install.Answers.Energy);
        var vehicle = spec.Job.Vehicle;
        return new(
            "energy", "Alternator, reserve and standby",
            [
                "Average demand: what the gear takes in music, times its share of the day. Reserve and standby: usable charge over the current drawn, for the group of joined batteries that gives up first.",
                "Usable: half of a battery's capacity, of lithium four fifths (common practice).",
            ],
            [
                new("vehicle",
                    [
                        Input.Of(spec, "alternator", vehicle.Alternator, new Amps(0), "unknown"),
                        Input.Of(spec, "at idle", vehicle.IdleOutput, new Amps((vehicle.Alternator?.Value.Value ?? 0) / 2), "half of its rating (common practice)"),
                        Input.Of(spec, "base load", vehicle.BaseLoad, new Amps(25), "25 A (common practice)"),
                        .. spec.Gear.OfType<Battery>().Select(b => Input.Of(spec, $"capacity of {b.Id}", b.Capacity, EnergyBalance.CapacityOf(b), "60 Ah (common practice)")),
                    ],
                    [
                        Result.Of("sources at speed", energy.AlternatorAtSpeed), Result.Of("sources at idle", energy.AlternatorAtIdle), Result.Of("average demand", energy.AverageDemand),
                        Result.Of("demand at full output", energy.PeakDemand), Result.Of("current at rest", energy.StandbyCurrent), Result.Of("usable charge", energy.UsableCharge),
                        energy.Reserve is null ? Result.Said("music with the engine off", "no limit") : Result.Of("music with the engine off", energy.Reserve),
                        energy.StandbyTime is null ? Result.Said("starts after standing", "no limit") : Result.Of("starts after standing", energy.StandbyTime),
                    ]),
            ]);
    }
}
