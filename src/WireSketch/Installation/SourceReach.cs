using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>What a source feeds by itself: up to the next source, whose own feed tells the rest.</summary>
/// <param name="Feed">All that it can feed.</param>
/// <param name="Own">Without what lies behind another source's positive terminal, or behind a dead short.</param>
internal sealed record SourceReach(SupplyTree Feed, ImmutableArray<ProtectedConductor> Own)
{
    /// <summary>What each source feeds by itself, in the order of the sources.</summary>
    public static ImmutableArray<SourceReach> Of(Wiring wiring)
    {
        var sources = wiring.Feeds.Select(f => f.Source.Index).ToHashSet();
        return [.. wiring.Feeds.Select(f => new SourceReach(f, Within(f, sources)))];
    }

    private static ImmutableArray<ProtectedConductor> Within(SupplyTree feed, HashSet<int> sources)
    {
        // Beyond: what lies behind a conductor that ends at another source or on ground.
        var beyond = new HashSet<int>();
        var own = ImmutableArray.CreateBuilder<ProtectedConductor>();
        foreach (var fed in feed.Conductors)
        {
            if (fed.Before is { } before && (beyond.Contains(before.Conductor.Index) || Ends(before.Near) || Ends(before.Far)))
            {
                beyond.Add(fed.Conductor.Index);
            }
            else if (fed.Conductor.Wire.Size.Area.Value > 0 && !Ends(fed.Near))
            {
                own.Add(fed);
            }
        }

        return own.ToImmutable();

        bool Ends(Terminal t) => (t.Index != feed.Source.Index && sources.Contains(t.Index)) || TerminalRoles.IsGround(t);
    }

    /// <summary>Whether a source's plus reaches the body or a minus without a load between.</summary>
    public static bool IsShorted(Wiring wiring) =>
        wiring.Feeds.Any(f => f.Conductors.Any(c => !TerminalRoles.IsGround(c.Near) && TerminalRoles.IsGround(c.Far)));

    /// <summary>
    /// The most a source can give by its nature: alternators and chargers limit themselves, batteries do not. Null: no limit, or none is
    /// known.
    /// </summary>
    public static Amps? Limit(InstalledSystem install, Terminal source) => install.Wiring.SourceAt(source)?.Source switch
    {
        AlternatorSource a => a.Output?.Value ?? install.Spec.Job.Vehicle.Alternator?.Value,
        ChargerSource g => g.Current?.Value,
        _ => null,
    };

    /// <summary>Whether a conductor carries the most that its source can give, so that it needs no protection against it.</summary>
    public static bool CarriesAllOf(InstalledSystem install, Terminal source, Conductor conductor) =>
        Limit(install, source) is { } limit && install.Answers.Conductors[conductor.Index].Ampacity is { } ampacity && ampacity >= limit;

    /// <summary>
    /// The highest current in a conductor, whichever way, and the state in which it flows: what charges by day may have to be fed by night.
    /// Null if there is no operating point at full output, or one that means nothing.
    /// </summary>
    public static (Amps Amps, SystemState State)? Highest(InstalledSystem install, Conductor conductor) =>
        Highest(install, s => s.Amps[conductor.Index]);

    /// <summary>The highest current through a link, whichever way, and the state in which it flows; null as for a conductor.</summary>
    public static (Amps Amps, SystemState State)? Highest(InstalledSystem install, InternalConnection link) =>
        Highest(install, s => s.LinkAmps[link.Index]);

    /// <summary>The highest current in a conductor in any state.</summary>
    public static Amps? Most(InstalledSystem install, Conductor conductor) => Highest(install, conductor)?.Amps;

    /// <summary>The highest current through a link in any state.</summary>
    public static Amps? Most(InstalledSystem install, InternalConnection link) => Highest(install, link)?.Amps;

    private static (Amps Amps, SystemState State)? Highest(InstalledSystem install, Func<StateResult, Amps> of)
    {
        if (install.IsShorted || !install.Answers.State(SystemState.FullOutput).IsSolved)
        {
            return null;
        }

        // Where states differ by rounding only, the first one is named.
        (Amps Amps, SystemState State) highest = (new(0), SystemState.FullOutput);
        foreach (var state in install.Answers.States.Where(s => s.IsSolved))
        {
            var amps = new Amps(Math.Abs(of(state).Value));
            highest = amps.Value > highest.Amps.Value * 1.001 ? (amps, state.State) : highest;
        }

        return highest;
    }
}
