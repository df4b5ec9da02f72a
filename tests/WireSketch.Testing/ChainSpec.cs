using System.Globalization;
using System.Text;

namespace WireSketch.Testing;

/// <summary>
/// Generates a chain of bus bars with a lamp on each: every lamp is fed through all bars before its own, so what grows with the way
/// shows.
/// </summary>
public static class ChainSpec
{
    /// <summary>Writes a chain of so many bus bars.</summary>
    public static string Write(int bars)
    {
        var gear = new StringBuilder();
        var runs = new StringBuilder();
        for (var i = 0; i < bars; i++)
        {
            var from = i == 0 ? "battery.+" : string.Create(CultureInfo.InvariantCulture, $"b{i - 1}");
            var fuse = i == 0 ? ", fuse: { rating: 60 A, at: 2 in }" : "";
            gear.Append(CultureInfo.InvariantCulture, $"  b{i}: {{ is: bus bar }}\n  l{i}: {{ is: lamp, power: 1 W }}\n");
            runs.Append(CultureInfo.InvariantCulture, $"  P{i}: {{ from: {from}, to: b{i}, wire: 4 AWG red, length: 1 ft{fuse} }}\n")
                .Append(
                    CultureInfo.InvariantCulture,
                    $"  S{i}: {{ from: b{i}, to: l{i}.+, wire: 16 AWG red, length: 1 ft, fuse: {{ rating: 5 A, at: 2 in }} }}\n")
                .Append(CultureInfo.InvariantCulture, $"  G{i}: {{ from: l{i}.-, to: bolt, wire: 16 AWG black, length: 1 ft }}\n");
        }

        return $"""
            wiresketch: 1
            job: {"{"} title: chain {"}"}
            gear:
              battery: {"{"} is: battery, origin: factory, capacity: 70 Ah {"}"}
              bolt: {"{"} is: chassis point, surface: bare metal {"}"}
            {gear}runs:
            {runs}
            """.ReplaceLineEndings("\n").TrimEnd('\n') + "\n";
    }
}
