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
internal sealed record ConductorProtection(Terminal Source, ProtectedConductor Fed, InternalConnection Device, Amps Rating, ConductorResult Answer, Conductor? Thicker)
{
    public Conductor Conductor => Fed.Conductor;

    public bool IsOverrated => Answer.Ampacity is { } ampacity && Rating > ampacity + new Amps(1e-6);

    /// <summary>Whether the fuse would be right if the wire were copper: then the cladding is the cause, not the fuse.</summary>
    public bool IsBlamedOnCladding =>
        Conductor.Wire.Material == ConductorMaterial.Clad && Thicker is null && WireSizes.AsCopper(Answer) is { } copper && Rating <= copper + new Amps(1e-6);
}

/// <summary>Sets every fed conductor beside the device that protects it.</summary>
internal static class ConductorProtections
{
    /// <summary>Tolerance between sizes of the two systems that are sold for each other, such as 4 AWG and 21 mm2.</summary>
    private const double SameSize = 1.08;

    /// <summary>Every conductor with at least one rated device before it, source by source.</summary>
    public static IEnumerable<ConductorProtection> Of(InstalledSystem install)
    {
        foreach (var (feed, own) in SourceReach.Own(install))
        {
            var depth = own.ToDictionary(c => c.Conductor.Index, c => c.Protections.Length);
            foreach (var fed in own)
            {
                var device = fed.Protections.Where(p => p.Rating is not null).OrderBy(p => p.Rating!.Value.Value).LastOrDefaultOfLowest();
                if (device?.Rating is not { } rating || SourceReach.CarriesAllOf(install, feed.Source, fed.Conductor))
                {
                    continue;
                }

                var thicker = fed.Through.LastOrDefault(t => depth.GetValueOrDefault(t.Index, -1) == fed.Protections.Length
                    && WireSizes.CopperArea(t) > WireSizes.CopperArea(fed.Conductor) * SameSize);
                yield return new(feed.Source, fed, device, rating, install.Answers.Conductors[fed.Conductor.Index], thicker);
            }
        }
    }

    /// <summary>
    /// Every conductor between a source and its first devices, with the largest of those: it carries what that lets pass, though a short on
    /// the conductor itself does not flow there.
    /// </summary>
    public static IEnumerable<ConductorProtection> Ahead(InstalledSystem install)
    {
        foreach (var (feed, own) in SourceReach.Own(install))
        {
            foreach (var fed in own.Where(c => c.Protections.IsEmpty && !SourceReach.CarriesAllOf(install, feed.Source, c.Conductor)))
            {
                var device = own.Where(c => !c.Protections.IsEmpty && c.Through.Contains(fed.Conductor)).Select(c => c.Protections[0]).Where(d => d.Rating is not null).MaxBy(d => d.Rating!.Value.Value);
                if (device?.Rating is { } rating)
                {
                    yield return new(feed.Source, fed, device, rating, install.Answers.Conductors[fed.Conductor.Index], null);
                }
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
}
