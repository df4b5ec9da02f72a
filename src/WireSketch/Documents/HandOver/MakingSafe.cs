using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Documents.HandOver;

/// <summary>How to take everything off the supply, before work on the vehicle.</summary>
internal static class MakingSafe
{
    public static IEnumerable<string> Steps(InstalledSystem install)
    {
        yield return "Switch everything off, take the key out, and wait as long as the vehicle maker says (often some minutes, until "
            + "its control units sleep).";
        foreach (var source in install.Spec.Gear.Where(g => g.Cautions.Contains(GearCaution.OwnCurrent)))
        {
            var fuses = install.Wiring.Links.Where(l =>
                l.Protects
                    && install.Wiring.Feeds.Where(f => ReferenceEquals(f.Source.Gear, source))
                        .SelectMany(f => f.Conductors)
                        .Any(c => c.Protections.FirstOrDefault()?.Index == l.Index))
                .Select(l => l.Id)
                .ToArray();
            yield return $"{Named(source)} gives current of its own: switch it off or cover "
                + $"it{(fuses.Length > 0 ? $", then take out {string.Join(" and ", fuses)}" : "")}.";
        }

        var batteries = install.Spec.Gear.Where(g => g.Cautions.Contains(GearCaution.BatteryPosts)).ToArray();
        if (batteries.Length > 0)
        {
            yield return $"Take the negative terminal off "
                + $"{(batteries.Length > 1 ? "every battery: " : "")}{string.Join(", then ", batteries.Select(Named))}. Tuck it away so "
                + "that it cannot spring back.";
        }

        foreach (var capacitor in install.Spec.Gear.Where(g => g.Cautions.Contains(GearCaution.HoldsCharge)))
        {
            yield return $"{Named(capacitor)} stays charged: discharge it through a lamp or resistor, never by a short.";
        }

        yield return "To connect again: negative last, then look whether clock, windows and radio need to be set anew.";
    }

    private static string Named(Gear gear)
    {
        var where = Whereabouts.Of(gear);
        return where.Length == 0 ? gear.Id : $"{gear.Id} ({where})";
    }
}
