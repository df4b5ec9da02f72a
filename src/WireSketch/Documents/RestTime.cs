using WireSketch.Installation;

namespace WireSketch.Documents;

/// <summary>What is not known about current at rest.</summary>
internal static class RestTime
{
    /// <summary>Devices that sleep and of which nobody states what they take then: they count as nothing.</summary>
    public static string[] Unstated(InstalledSystem install) =>
        [.. install.Spec.Gear.Where(g => g.PowerInputs.Any(p => p.Takes is { SleepsByItself: true, Standby: null })).Select(g => g.Id)];
}
