using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Electrical.Energy;

/// <summary>What the channels of a device give together at full output.</summary>
/// <param name="Stated">Watts of those whose power is known.</param>
/// <param name="IsWhole">Nothing is missing: every channel in use says what power it gives; without a load, at least one channel
/// does.</param>
internal readonly record struct ChannelOutput(Watts Stated, bool IsWhole)
{
    public static ChannelOutput Of(Gear device, IEnumerable<ChannelResult> channels)
    {
        if (device.PowerInputs.Select(p => p.Takes).OfType<OutputDraw>().FirstOrDefault() is not { } takes)
        {
            return new(new(0), true);
        }

        var own = channels.Where(c => ReferenceEquals(c.Gear, device)).ToArray();
        var loaded = Array.FindAll(own, c => c.Nominal is not null && c.Fault == LoadFault.None);
        return new(
            new(own.Sum(c => c.Power?.Value ?? 0)),
            loaded.Length > 0 ? Array.TrueForAll(loaded, c => c.Power is not null) : takes.StatesPower);
    }
}
