using WireSketch.Language;
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
        var radio = nets.Where(t => t.Gear is HeadUnit && t.Role == TerminalRole.Speaker)
            .Select(t => SignalFeeds.GroupOf(t.Gear, t.Shape.Name)?.Maximum?.Value)
            .OfType<Volts>();
        var tap = nets.Select(t => (t.Gear as TapPoint)?.Maximum?.Value).OfType<Volts>();
        var amp = install.Answers.Channels.Where(c =>
            c.Volts is not null && nets.Any(t => t.Shape.Name == c.Channel && ReferenceEquals(t.Gear, c.Gear)))
            .Select(c => c.Volts!.Value);
        return radio.Concat(tap).Concat(amp).Select(v => (Volts?)v).OrderByDescending(v => v!.Value).FirstOrDefault();
    }
}
