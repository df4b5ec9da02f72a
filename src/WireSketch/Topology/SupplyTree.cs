using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Topology;

/// <summary>What one supply source can feed: a tree of conductors, each with a pointer to the one before it.</summary>
public sealed class SupplyTree
{
    private readonly Dictionary<int, ProtectedConductor> byConductor;
    private readonly Dictionary<int, (ProtectedConductor First, int Count)> behind = [];

    public SupplyTree(Terminal source, ImmutableArray<ProtectedConductor> conductors)
    {
        Source = source;
        Conductors = conductors;
        byConductor = conductors.ToDictionary(c => c.Conductor.Index);
        foreach (var conductor in conductors)
        {
            foreach (var device in conductor.Protections)
            {
                behind[device.Index] = behind.TryGetValue(device.Index, out var known) ? (known.First, known.Count + 1) : (conductor, 1);
            }
        }
    }

    /// <summary>The source's positive terminal.</summary>
    public Terminal Source { get; }

    /// <summary>Every conductor it can feed, nearest first; each comes after the one before it on its way.</summary>
    public ImmutableArray<ProtectedConductor> Conductors { get; }

    /// <summary>A conductor as seen from this source; null if it cannot feed it.</summary>
    public ProtectedConductor? Of(Conductor conductor) => byConductor.GetValueOrDefault(conductor.Index);

    /// <summary>
    /// The first conductor behind a fuse or breaker: what stands ahead of the device is the same for all behind it. Null if it has none.
    /// </summary>
    public ProtectedConductor? FirstBehind(InternalConnection device) => behind.GetValueOrDefault(device.Index).First;

    /// <summary>How many conductors lie behind a fuse or breaker.</summary>
    public int CountBehind(InternalConnection device) => behind.GetValueOrDefault(device.Index).Count;
}

/// <summary>A conductor as seen from a source that can feed it.</summary>
/// <param name="conductor">The conductor.</param>
/// <param name="near">The end that the source's current comes in at.</param>
/// <param name="distance">Length of wire from the source to that end.</param>
/// <param name="protections">What protects it against the source.</param>
/// <param name="before">The conductor before it.</param>
public sealed class ProtectedConductor(
    Conductor conductor, Terminal near, Meters distance, ImmutableArray<InternalConnection> protections, ProtectedConductor? before)
{
    public Conductor Conductor => conductor;

    /// <summary>The end that the source's current comes in at.</summary>
    public Terminal Near => near;

    public Terminal Far => conductor.Other(near);

    /// <summary>Length of wire from the source to the near end.</summary>
    public Meters Distance => distance;

    /// <summary>
    /// Fuses and breakers between source and conductor, nearest to the source first. Empty: nothing protects it against this source.
    /// </summary>
    public ImmutableArray<InternalConnection> Protections => protections;

    /// <summary>The conductor before it on the way from the source; null for the first.</summary>
    public ProtectedConductor? Before => before;

    /// <summary>How many conductors lie between the source and this one.</summary>
    public int Depth { get; } = before is null ? 0 : before.Depth + 1;

    /// <summary>The conductors between source and this one, nearest to this one first.</summary>
    public IEnumerable<ProtectedConductor> Back()
    {
        for (var at = before; at is not null; at = at.Before)
        {
            yield return at;
        }
    }

    /// <summary>The conductors between source and this one, from the source on.</summary>
    public ImmutableArray<Conductor> Through() => [.. Back().Select(b => b.Conductor).Reverse()];

    /// <summary>Whether its way from the source leads through another conductor of the same tree.</summary>
    public bool ComesThrough(ProtectedConductor other) => Back().SkipWhile(b => b.Depth > other.Depth).FirstOrDefault() == other;
}
