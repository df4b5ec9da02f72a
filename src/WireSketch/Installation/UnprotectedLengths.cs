using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>What is wrong with the wire ahead of the first fuse.</summary>
internal enum UnprotectedLengthFault
{
    /// <summary>Some of it leads to a load without any fuse.</summary>
    Unfused,

    /// <summary>All of it leads to fuses, but they sit too far along.</summary>
    TooFar,

    /// <summary>It leads to another source, and only that one is fused against.</summary>
    OtherEnd,
}

/// <summary>A conductor ahead of the first protective device that breaks the limit.</summary>
/// <param name="Source">The source's positive terminal.</param>
/// <param name="Fed">The conductor: the first on its way that goes beyond the limit.</param>
/// <param name="Fault">What is wrong.</param>
/// <param name="First">Distance along the wire from the source to the nearest device; null if there is none.</param>
/// <param name="Device">That device.</param>
/// <param name="Unprotected">Terminals of loads that no device stands before.</param>
/// <param name="Other">The source at the other end, if the fault is about it.</param>
internal sealed record UnprotectedLength(
    Terminal Source, ProtectedConductor Fed, UnprotectedLengthFault Fault, Meters? First, InternalConnection? Device,
    ImmutableArray<Terminal> Unprotected, Terminal? Other);

/// <summary>Walks from every source along the wire that nothing protects against it.</summary>
internal sealed class UnprotectedLengths
{
    /// <summary>
    /// How far from the source the first device may sit (common practice, no published source; 33 CFR 183.455(b) is stricter).
    /// </summary>
    public static Meters Limit { get; } = Meters.FromInches(18);

    private readonly InstalledSystem install;
    private readonly Terminal source;
    private readonly ILookup<int, ProtectedConductor> byNear;
    private readonly List<UnprotectedLength> found = [];
    private readonly HashSet<int> sources;

    private UnprotectedLengths(InstalledSystem install, Terminal source, IEnumerable<ProtectedConductor> bare)
    {
        this.install = install;
        this.source = source;
        byNear = bare.ToLookup(c => c.Near.Index);
        sources = [.. install.Wiring.Feeds.Select(f => f.Source.Index)];
    }

    /// <summary>Every stretch of every source that breaks the limit, each run once for each fault.</summary>
    public static IEnumerable<UnprotectedLength> Of(InstalledSystem install)
    {
        var all = new List<UnprotectedLength>();
        foreach (var (feed, own) in install.Reaches)
        {
            var bare = own.Where(c => c.Protections.IsEmpty && !SourceReach.CarriesAllOf(install, feed.Source, c.Conductor)).ToArray();
            var walk = new UnprotectedLengths(install, feed.Source, bare);
            foreach (var start in walk.Reached(feed.Source).SelectMany(t => walk.byNear[t.Index]))
            {
                walk.Visit(start);
            }

            all.AddRange(walk.found);
        }

        // A run without any fuse between two batteries is told by both; once is enough.
        return all.DistinctBy(s => (s.Fed.Conductor.RunId, s.Fault));
    }

    private void Visit(ProtectedConductor fed)
    {
        var ends = new Ends();
        Collect(fed, ends);
        if (ends.Bare.Count == 0 && ends.Devices.Count == 0)
        {
            return;
        }

        var end = fed.Distance + fed.Conductor.Length;
        var crosses = end > Limit + new Meters(0.001);
        if (ends.Bare.Count > 0 && (crosses || ends.Devices.Count == 0))
        {
            Add(fed, UnprotectedLengthFault.Unfused, ends, null);
        }
        else if (crosses)
        {
            var other = install.Wiring.Feeds.FirstOrDefault(f => f.Source.Index != source.Index
                && f.Of(fed.Conductor) is { Protections.IsEmpty: false }
                && ends.Devices.Any(d => Leads(d.Device, fed, f.Source)))?.Source;
            Add(fed, other is null ? UnprotectedLengthFault.TooFar : UnprotectedLengthFault.OtherEnd, ends, other);
        }
        else
        {
            foreach (var next in Reached(fed.Far).SelectMany(t => byNear[t.Index]).Where(n => n.ComesThrough(fed)))
            {
                Visit(next);
            }
        }
    }

    /// <summary>Whether the device stands between this source and another: the other feeds the conductor through it.</summary>
    private bool Leads(InternalConnection device, ProtectedConductor fed, Terminal other) =>
        install.Wiring.Feeds.Where(f => f.Source.Index == other.Index).Any(f => f.Of(fed.Conductor)?.Protections.Contains(device) == true);

    private void Add(ProtectedConductor fed, UnprotectedLengthFault fault, Ends ends, Terminal? other)
    {
        var nearest = ends.Devices.OrderBy(d => d.At.Value).ThenBy(d => d.Device.Index).FirstOrDefault();
        found.Add(new(source, fed, fault, nearest.Device is null ? null : nearest.At, nearest.Device, [.. ends.Bare], other));
    }

    private void Collect(ProtectedConductor fed, Ends ends)
    {
        var at = fed.Distance + fed.Conductor.Length;
        var reached = Reached(fed.Far);
        foreach (var t in reached)
        {
            ends.Devices.AddRange(install.Wiring.LinksAt[t.Index].Where(l => l.Protects).Select(l => (l, at)));
        }

        var next = reached.SelectMany(t => byNear[t.Index])
            .Where(n => n.Conductor.Index != fed.Conductor.Index && n.ComesThrough(fed))
            .ToArray();
        foreach (var n in next)
        {
            Collect(n, ends);
        }

        if (next.Length == 0 && !reached.Any(t => install.Wiring.LinksAt[t.Index].Any(l => l.Protects)) && !IsHarmless(fed.Far, at))
        {
            ends.Bare.Add(fed.Far);
        }
    }

    /// <summary>A short wire may end at another battery of the bank, or at a device that has fuses of its own.</summary>
    private bool IsHarmless(Terminal far, Meters at) =>
        at <= Limit + new Meters(0.001)
            && (sources.Contains(far.Index) || (far.Gear is { } gear && gear.PowerInputs.Any(p => p.OwnFuse is not null)));

    /// <summary>Terminals joined to one inside devices without a fuse between.</summary>
    private Terminal[] Reached(Terminal start) =>
        [
            .. install.Wiring.Graph.From(start)
                .Over(Follow.None, (c, from) => Pass.Unprotected(c, from) && c.Other(from) != install.Wiring.Body)
                .Terminals()
        ];

    private sealed class Ends
    {
        public List<(InternalConnection Device, Meters At)> Devices { get; } = [];

        public List<Terminal> Bare { get; } = [];
    }
}
