using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules;

/// <summary>What each source feeds by itself: up to the next source, whose own feed tells the rest.</summary>
internal static class Feeding
{
    /// <summary>Feeds without what lies behind another source's positive terminal, or behind a dead short.</summary>
    public static IEnumerable<(Feed Feed, ImmutableArray<FedConductor> Own)> Own(Install install)
    {
        var sources = install.Wiring.Feeds.Select(f => f.Source.Index).ToHashSet();
        foreach (var feed in install.Wiring.Feeds)
        {
            yield return (feed, [.. feed.Conductors.Where(c => c.Conductor.Wire.Size.Area.Value > 0 && !Passes(c, feed.Source.Index))]);
        }

        bool Passes(FedConductor fed, int own) => Ends(fed.Near, own) || fed.Through.Any(t => Ends(t.From, own) || Ends(t.To, own));

        bool Ends(Terminal t, int own) => (t.Index != own && sources.Contains(t.Index)) || IsReturn(t);
    }

    /// <summary>Whether a source's plus reaches the body or a minus without a load between.</summary>
    public static bool IsShorted(Wiring wiring) => wiring.Feeds.Any(f => f.Conductors.Any(c => !IsReturn(c.Near) && IsReturn(c.Far)));

    /// <summary>Whether a terminal is on the body or on a source's minus by itself.</summary>
    public static bool IsReturn(Terminal t) =>
        t.Gear is null or ChassisPoint or BusBar { Ground: true } or TapPoint { Carries.Value: "ground" }
        || (t.Gear is Battery or Alternator or GeneralSource && t.Role == Language.TerminalRole.Ground);

    /// <summary>The most a source can give by its nature: alternators and chargers limit themselves, batteries do not. Null: no limit, or none is known.</summary>
    public static Amps? Limit(Install install, Terminal source) => source.Gear switch
    {
        Alternator a => a.Output?.Value ?? install.Spec.Job.Vehicle.Alternator?.Value,
        GeneralSource g => g.Current?.Value,
        _ => null,
    };

    /// <summary>Whether a conductor carries the most that its source can give, so that it needs no protection against it.</summary>
    public static bool CarriesAllOf(Install install, Terminal source, Conductor conductor) =>
        Limit(install, source) is { } limit && install.Answers.Conductors[conductor.Index].Ampacity is { } ampacity && ampacity >= limit;

    /// <summary>Current in a conductor at full output, whichever way; null if there is no operating point, or one that means nothing.</summary>
    public static Amps? FullOutput(Install install, Conductor conductor)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        return state.IsSolved && !install.IsShorted ? new Amps(Math.Abs(state.Amps[conductor.Index].Value)) : null;
    }

    /// <summary>Current through a link at full output, whichever way; null if there is no operating point, or one that means nothing.</summary>
    public static Amps? FullOutput(Install install, Link link)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        return state.IsSolved && !install.IsShorted ? new Amps(Math.Abs(state.LinkAmps[link.Index].Value)) : null;
    }
}
