using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Installation;

/// <summary>What a factory output is loaded with.</summary>
internal static class SourceLoads
{
    /// <summary>A resistor of the usual tolerance is load enough.</summary>
    public const double Tolerance = 1.1;

    /// <summary>The highest voltage of what it lies across; null if that is unknown.</summary>
    public static Volts? VoltsAt(InstalledSystem install, LoadResistor resistor)
    {
        var nets = install.Wiring.TerminalsOf(resistor).SelectMany(t => install.Wiring.NetOf[t.Index].Terminals).ToArray();
        var source = nets.SelectMany(t => t.Gear?.SignalOutputs.Where(o => o.Terminal == t.Shape && o.CarriesOn.IsEmpty) ?? [])
            .Select(o => o.Maximum?.Value)
            .OfType<Volts>();
        var amp = install.Answers.Channels.Where(c =>
            c.Volts is not null && nets.Any(t => t.Shape.Name == c.Channel && ReferenceEquals(t.Gear, c.Gear)))
            .Select(c => c.Volts!.Value);
        return source.Concat(amp).Select(v => (Volts?)v).OrderByDescending(v => v!.Value).FirstOrDefault();
    }
}
