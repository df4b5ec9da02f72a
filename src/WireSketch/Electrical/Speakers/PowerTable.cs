using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Electrical.Speakers;

/// <summary>
/// What a channel gives into any load, from the loads for which its power is stated: between two of them the output voltage is
/// interpolated, below the lowest the output current stays what it is there, above the highest the output voltage does.
/// </summary>
internal static class PowerTable
{
    /// <summary>Power into a load; null if no power is stated.</summary>
    public static Watts? At(ImmutableArray<(Written<Ohms> Key, Written<Watts> Value)> table, Ohms load)
    {
        if (table.IsEmpty)
        {
            return null;
        }

        var points = table.Select(p => (Ohms: p.Key.Value.Value, Volts: Math.Sqrt(p.Key.Value.Value * p.Value.Value.Value))).OrderBy(p => p.Ohms).ToArray();
        var z = load.Value;
        if (z <= points[0].Ohms)
        {
            var amps = points[0].Volts / points[0].Ohms;
            return new(amps * amps * z);
        }

        for (var i = 1; i < points.Length; i++)
        {
            if (z <= points[i].Ohms)
            {
                var share = (z - points[i - 1].Ohms) / (points[i].Ohms - points[i - 1].Ohms);
                var volts = points[i - 1].Volts + (share * (points[i].Volts - points[i - 1].Volts));
                return new(volts * volts / z);
            }
        }

        return new(points[^1].Volts * points[^1].Volts / z);
    }
}
