using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules;

/// <summary>One way to join the coils of a run, as it would be typed, and the load it makes.</summary>
internal sealed record HookupFix(string Words, Ohms Makes);

/// <summary>What else the coils at the end of a run could be joined to.</summary>
internal static class HookupFixes
{
    /// <summary>The hookups of the coils on a channel, lowest load first. Empty where one run does not feed all of them.</summary>
    public static ImmutableArray<HookupFix> Of(Wiring wiring, ChannelResult channel)
    {
        var drivers = ChannelWiring.Drivers(channel).Select(d => d.Speaker).ToImmutableArray();
        if (ChannelWiring.RunOf(wiring, channel) is not { Run.Hookup: not null } run
            || !run.To.All(e => e.Gear.SpeakerParts.Any(p => p is VoiceCoil))
            || drivers.Any(d => run.To.All(e => e.Gear.Id != d.Id)))
        {
            return [];
        }

        (string Words, bool CoilsInSeries, bool DriversInSeries)[] ways =
        [
            ("hookup: parallel", false, false), ("hookup: series", true, true), ("hookup: series-parallel", true, false),
            ("hookup: { coils: parallel, drivers: series }", false, true),
        ];
        return [
            .. ways.Select(w => new HookupFix(w.Words, Load(drivers, w.CoilsInSeries, w.DriversInSeries)))
                .DistinctBy(c => Math.Round(c.Makes.Value, 6))
                .OrderBy(c => c.Makes)
        ];
    }

    /// <summary>The hookup with the lowest load that is still allowed; null if there is none.</summary>
    public static HookupFix? LowestAllowed(Wiring wiring, ChannelResult channel, Ohms minimum) =>
        Of(wiring, channel).FirstOrDefault(c => c.Makes.Value >= minimum.Value * (1 - 1e-6));

    /// <summary>The change of the file that makes a choice.</summary>
    public static ImmutableArray<Fix> FixOf(Wiring wiring, ChannelResult channel, HookupFix choice) =>
        ChannelWiring.RunOf(wiring, channel)?.Run.Hookup is { } hookup
            ? [new($"write {choice.Words}: {choice.Makes}", [new(hookup.At, choice.Words["hookup: ".Length..])])]
            : [];

    private static Ohms Load(ImmutableArray<Speaker> drivers, bool coilsInSeries, bool driversInSeries) =>
        new(Join(drivers.Select(d => Join(Enumerable.Repeat(d.CoilImpedance.Value, d.CoilCount), coilsInSeries)), driversInSeries));

    private static double Join(IEnumerable<double> ohms, bool inSeries) => inSeries ? ohms.Sum() : 1 / ohms.Sum(o => 1 / o);

    /// <summary>What to do about a load that is too low.</summary>
    public static (string Help, ImmutableArray<Fix> Fixes) Remedy(InstalledSystem install, ChannelResult channel, Ohms minimum) =>
        LowestAllowed(install.Wiring, channel, minimum) is { } choice
            ? ($"write {choice.Words}, which makes {choice.Makes}", FixOf(install.Wiring, channel, choice))
            : ("put fewer drivers on the channel, choose drivers with other coils, or an amplifier that may drive this load", []);
}
