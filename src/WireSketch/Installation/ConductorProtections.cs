using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>A conductor and what protects it against one source.</summary>
/// <param name="Source">The source's positive terminal.</param>
/// <param name="Fed">The conductor as seen from there.</param>
/// <param name="Device">Of the devices before it, the one with the lowest rating; of like ones, the nearest to the conductor.</param>
/// <param name="Rating">Its rating.</param>
/// <param name="Answer">What is known of the conductor.</param>
/// <param name="Thicker">A conductor after the last device and before this one that has more copper; null if there is none.</param>
internal sealed record ConductorProtection(
    Terminal Source, ProtectedConductor Fed, InternalConnection Device, Amps Rating, ConductorResult Answer, Conductor? Thicker)
{
    public Conductor Conductor => Fed.Conductor;

    public bool IsOverrated => Answer.Ampacity is { } ampacity && Rating > ampacity + new Amps(1e-6);

    /// <summary>Whether the fuse would be right if the wire were copper: then the cladding is the cause, not the fuse.</summary>
    public bool IsBlamedOnCladding =>
        Conductor.Wire.Material == ConductorMaterial.Clad
            && Thicker is null
            && WireSizes.AsCopper(Answer) is { } copper
            && Rating <= copper + new Amps(1e-6);
}

/// <summary>Sets every fed conductor beside the device that protects it.</summary>
internal static class ConductorProtections
{
    /// <summary>Tolerance between sizes of the two systems that are sold for each other, such as 4 AWG and 21 mm2.</summary>
    private const double SameSize = 1.08;

    /// <summary>Every conductor with at least one rated device before it, source by source.</summary>
    public static IEnumerable<ConductorProtection> Of(InstalledSystem install)
    {
        foreach (var (feed, own) in install.Reaches)
        {
            var thicker = new ThickerBefore(own);
            foreach (var fed in own)
            {
                var device = fed.Protections.Where(p => p.Rating is not null).OrderBy(p => p.Rating!.Value.Value).LastOrDefaultOfLowest();
                if (device?.Rating is { } rating && !SourceReach.CarriesAllOf(install, feed.Source, fed.Conductor))
                {
                    yield return new(feed.Source, fed, device, rating, install.Answers.Conductors[fed.Conductor.Index], thicker.Of(fed));
                }
            }
        }
    }

    /// <summary>
    /// Every conductor between a source and its first devices, with the largest of those: it carries what that lets pass, though a short on
    /// the conductor itself does not flow there.
    /// </summary>
    public static IEnumerable<ConductorProtection> Ahead(InstalledSystem install)
    {
        foreach (var (feed, own) in install.Reaches)
        {
            var largest = LargestBehind(feed, own);
            foreach (var fed in own.Where(c => c.Protections.IsEmpty && !SourceReach.CarriesAllOf(install, feed.Source, c.Conductor)))
            {
                if (largest.TryGetValue(fed.Conductor.Index, out var device))
                {
                    yield return new(feed.Source, fed, device, device.Rating!.Value, install.Answers.Conductors[fed.Conductor.Index], null);
                }
            }
        }
    }

    /// <summary>
    /// By conductor, the first device with the highest rating on the ways that lead on through it; of like ones, that of the nearest
    /// conductor.
    /// </summary>
    private static Dictionary<int, InternalConnection> LargestBehind(SupplyTree feed, ImmutableArray<ProtectedConductor> own)
    {
        var ranks = own.Select((c, i) => (c.Conductor.Index, Rank: i)).ToDictionary(x => x.Index, x => x.Rank);
        var best = new Dictionary<int, (InternalConnection Device, int Rank)>();

        // From the farthest back: each tells the one before it what lies behind.
        foreach (var fed in feed.Conductors.Reverse().Where(f => f.Before is not null))
        {
            if (ranks.TryGetValue(fed.Conductor.Index, out var rank) && fed.Protections is [{ Rating: not null } first, ..])
            {
                Offer(fed.Before!.Conductor.Index, first, rank);
            }

            if (best.TryGetValue(fed.Conductor.Index, out var behind))
            {
                Offer(fed.Before!.Conductor.Index, behind.Device, behind.Rank);
            }
        }

        return best.ToDictionary(b => b.Key, b => b.Value.Device);

        void Offer(int conductor, InternalConnection device, int rank)
        {
            if (!best.TryGetValue(conductor, out var known)
                || (device.Rating!.Value.Value, -rank).CompareTo((known.Device.Rating!.Value.Value, -known.Rank)) > 0)
            {
                best[conductor] = (device, rank);
            }
        }
    }

    private static InternalConnection? LastOrDefaultOfLowest(this IEnumerable<InternalConnection> byRating)
    {
        InternalConnection? lowest = null;
        foreach (var link in byRating)
        {
            if (lowest is not null && link.Rating!.Value > lowest.Rating!.Value)
            {
                break;
            }

            lowest = link;
        }

        return lowest;
    }

    /// <summary>Finds, for a conductor, the last one before it and after the same devices that has more copper.</summary>
    private sealed class ThickerBefore
    {
        private readonly HashSet<int> own;
        private readonly Dictionary<int, ProtectedConductor?> next = [];

        public ThickerBefore(ImmutableArray<ProtectedConductor> own)
        {
            this.own = [.. own.Select(c => c.Conductor.Index)];
            foreach (var fed in own)
            {
                next[fed.Conductor.Index] = Find(fed, WireSizes.CopperArea(fed.Conductor));
            }
        }

        public Conductor? Of(ProtectedConductor fed) => Find(fed, WireSizes.CopperArea(fed.Conductor) * SameSize)?.Conductor;

        /// <summary>What has no more copper than one that was looked at need not be looked at.</summary>
        private ProtectedConductor? Find(ProtectedConductor fed, double copper)
        {
            for (var at = fed.Before; at is not null && at.Protections.Length == fed.Protections.Length;)
            {
                if (!own.Contains(at.Conductor.Index))
                {
                    at = at.Before;
                }
                else if (WireSizes.CopperArea(at.Conductor) > copper)
                {
                    return at;
                }
                else
                {
                    at = next[at.Conductor.Index];
                }
            }

            return null;
        }
    }
}
