using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>What becomes of a device that has to be woken.</summary>
internal enum TurnOnState
{
    Wakes,

    /// <summary>Its setting is nothing that it can wake on.</summary>
    Unable,

    /// <summary>Something arrives that it could wake on, but its setting is another.</summary>
    WrongMode,

    /// <summary>It waits for an offset that is lost on the way.</summary>
    NotCarried,

    /// <summary>Nothing arrives that could wake it.</summary>
    None,

    /// <summary>It waits for its input, and no cable brings anything there: that is told of the signal.</summary>
    NoSignal,
}

/// <summary>Sorts devices by what keeps them asleep, so that each is told once.</summary>
internal static class TurnOnStates
{
    public static TurnOnState Of(InstalledSystem install, TurnOnResult wake)
    {
        var able = WakesOn(wake.Gear);
        if (SettingOf(wake.Gear) is { } set && !able.IsEmpty && !able.Contains(set.Value))
        {
            return TurnOnState.Unable;
        }

        // A device that nothing is wired to is told as such.
        if (wake.By is not null || !install.Wiring.IsWired(wake.Gear))
        {
            return TurnOnState.Wakes;
        }

        var byWire = wake.Mode is WakeMode.Remote or WakeMode.Accessory;
        var fed = install.Answers.Signals.Any(s => ReferenceEquals(s.Gear, wake.Gear) && HasSource(s));
        var another = byWire
            ? able.Contains(WakeMode.DcOffset)
            : able.IsEmpty || able.Contains(WakeMode.Remote) || able.Contains(WakeMode.Accessory);
        return !wake.ModeMatches && another ? TurnOnState.WrongMode
            : byWire ? TurnOnState.None
            : fed ? TurnOnState.NotCarried
            : TurnOnState.NoSignal;
    }

    /// <summary>A chain that begins at an adapter or a processor is broken before it.</summary>
    public static bool HasSource(SignalResult signal) => !signal.Chain.IsEmpty && signal.Chain[0].SignalOutputs.All(o => o.MayBeFirst);

    /// <summary>What a device can wake on, as written; empty if nobody says.</summary>
    public static ImmutableArray<WakeMode> WakesOn(Gear gear) =>
        [.. gear.TurnOnInputs.SelectMany(i => i.Sleep?.WakesOn ?? []).Select(w => w.Value)];

    /// <summary>What a device is set to wake on; null if nobody says.</summary>
    public static Written<WakeMode>? SettingOf(Gear gear) =>
        gear.TurnOnInputs.Select(i => i.Sleep?.Setting).FirstOrDefault(s => s is not null);

    /// <summary>The terminal that a control wire lands on, of a device that sleeps.</summary>
    public static Terminal RemoteOf(Wiring wiring, Gear gear) =>
        wiring.At(gear, gear.TurnOnInputs.First(i => i.Sleep is not null).Terminal);

    /// <summary>Where the setting is written; else the device.</summary>
    public static SourceSpan PlaceOf(Gear gear) => SettingOf(gear)?.At ?? gear.Name.At;
}
