using WireSketch.Language;

namespace WireSketch.Installation;

/// <summary>What a device does in a chain of signals, as its inputs and outputs tell.</summary>
internal static class SignalRoles
{
    /// <summary>Gives power to speakers out of a signal that comes in.</summary>
    public static bool Amplifies(Gear gear) => gear.SignalOutputs.Any(o => o.Amplifies is not null);

    /// <summary>Amplifies by a single channel, which takes the signals of both sides.</summary>
    public static bool AmplifiesOneChannel(Gear gear) => gear.SignalOutputs is [{ Amplifies: not null }];

    /// <summary>Turns speaker level into line level.</summary>
    public static bool ChangesLevel(Gear gear) => gear.SignalOutputs.Any(o => o.ChangesLevel);

    /// <summary>Takes signals in and gives them on at the level of signals: neither source nor amplifier nor adapter.</summary>
    public static bool Processes(Gear gear) =>
        !Amplifies(gear)
            && !ChangesLevel(gear)
            && (!gear.SignalInputs.IsEmpty || gear.SignalOutputs.Any(o => !o.MayBeFirst));

    /// <summary>Is woken itself, and wakes others once it is awake.</summary>
    public static bool PassesTurnOnOn(Gear? gear) =>
        gear is { TurnOnOutputs.IsEmpty: false } && gear.TurnOnInputs.Any(i => i.Sleep is not null);
}
