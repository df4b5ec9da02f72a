using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Electrical.Speakers;

/// <summary>
/// What a channel gives by load: the square of its volts in proportion between the loads it is stated for, its volts as at the highest of
/// them above it, and a limit of current below the lowest.
/// </summary>
internal sealed class PowerCurve
{
    private readonly (double Ohms, double Watts)[] points;

    private PowerCurve(IEnumerable<(double Ohms, double Watts)> points) =>
        this.points = [.. points.Where(p => p.Ohms > 0 && p.Watts > 0).OrderBy(p => p.Ohms).DistinctBy(p => p.Ohms)];

    public bool IsKnown => points.Length > 0;

    /// <summary>The lowest load that it is stated for.</summary>
    public Ohms? Lowest => IsKnown ? new Ohms(points[0].Ohms) : null;

    public static PowerCurve Of(AmplifierChannel channel) => new(channel.Power.Select(p => (p.Key.Value.Value, p.Value.Value.Value)));

    /// <summary>As stated for the bridge; else twice the half's power at half the load.</summary>
    public static PowerCurve OfBridge(AmplifierChannel half) =>
        half.Bridged.IsEmpty
            ? new(half.Power.Select(p => (2 * p.Key.Value.Value, 2 * p.Value.Value.Value)))
            : new(half.Bridged.Select(p => (p.Key.Value.Value, p.Value.Value.Value)));

    /// <summary>A source that keeps its volts.</summary>
    public static PowerCurve OfVolts(Volts most) => new([(1, most.Value * most.Value)]) { KeepsVolts = true };

    private bool KeepsVolts { get; init; }

    public Volts VoltsAt(Ohms load)
    {
        var z = load.Value;
        var (first, last) = (points[0], points[^1]);
        if (z >= last.Ohms || KeepsVolts)
        {
            return new(Math.Sqrt(last.Watts * last.Ohms));
        }

        if (z <= first.Ohms)
        {
            return new(z * Math.Sqrt(first.Watts / first.Ohms));
        }

        var i = Array.FindIndex(points, p => p.Ohms > z);
        var (a, b) = (points[i - 1], points[i]);
        var share = (z - a.Ohms) / (b.Ohms - a.Ohms);
        return new(Math.Sqrt(((1 - share) * a.Ohms * a.Watts) + (share * b.Ohms * b.Watts)));
    }

    public Watts At(Ohms load)
    {
        var v = VoltsAt(load).Value;
        return new(v * v / load.Value);
    }
}
