using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules;

/// <summary>
/// Several findings may ask for a thicker size of one run, each for its own reason: all then name the size that is enough for all of
/// them.
/// </summary>
internal static class SizeAgreement
{
    public static IEnumerable<Finding> Of(InstalledSystem install, IEnumerable<Finding> findings)
    {
        var all = findings.ToArray();
        var most = all.SelectMany(f => f.Wants).Where(w => IsThicker(install, w))
            .GroupBy(w => w.Run, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Max(w => w.Size), StringComparer.Ordinal);
        return all.Select(f => Agreed(install, f, most));
    }

    private static bool IsThicker(InstalledSystem install, WantedSize wanted) =>
        install.Wiring.RunsById.GetValueOrDefault(wanted.Run) is { } run && wanted.Size > run.Wire.Size;

    private static Finding Agreed(InstalledSystem install, Finding finding, Dictionary<string, WireSize> most)
    {
        var help = finding.HelpText?.WithWants(w => Raised(install, w, most));
        return finding with
        {
            HelpText = help,
            Help = help?.ToString() ?? finding.Help,
            Fixes = [.. finding.Fixes.SelectMany(f => f.Wants is { } wanted
                && Raised(install, wanted, most) is var enough && enough != wanted
                ? RunText.SizeFix(install.Wiring.RunsById[wanted.Run], enough.Size) : [f])],
        };
    }

    private static WantedSize Raised(InstalledSystem install, WantedSize wanted, Dictionary<string, WireSize> most) =>
        IsThicker(install, wanted) && most.TryGetValue(wanted.Run, out var size) && size > wanted.Size
            ? wanted with { Size = size }
            : wanted;
}
