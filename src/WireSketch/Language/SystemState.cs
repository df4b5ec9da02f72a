using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>The states in which a system is computed.</summary>
public enum SystemState
{
    /// <summary>A test tone at full output, engine running at speed.</summary>
    FullOutput,

    /// <summary>Music, its average power, engine running at speed.</summary>
    Music,

    /// <summary>Music, engine idling.</summary>
    Idle,

    /// <summary>Music, engine stopped.</summary>
    EngineOff,

    /// <summary>Everything asleep.</summary>
    Standby,
}

/// <summary>The words of the states, and the sets of them that gear is live or closed in.</summary>
public static class SystemStates
{
    /// <summary>The words that <c>closed</c> and <c>state</c> take, in the order in which the states are computed.</summary>
    public static ChoiceWords<SystemState> Words { get; } = new(
        (SystemState.FullOutput, "full output"), (SystemState.Music, "music"), (SystemState.Idle, "idle"),
        (SystemState.EngineOff, "engine off"), (SystemState.Standby, "standby"));

    public static ImmutableSortedSet<SystemState> All { get; } = [
        SystemState.FullOutput, SystemState.Music, SystemState.Idle, SystemState.EngineOff, SystemState.Standby
    ];

    public static ImmutableSortedSet<SystemState> None { get; } = [];

    /// <summary>All but standby.</summary>
    public static ImmutableSortedSet<SystemState> Awake { get; } = All.Remove(SystemState.Standby);

    /// <summary>Those in which the engine runs, and with it the alternator.</summary>
    public static ImmutableSortedSet<SystemState> EngineRuns { get; } = [SystemState.FullOutput, SystemState.Music, SystemState.Idle];

    /// <summary>The word of a state.</summary>
    public static string WordOf(SystemState state) => Words[state];

    /// <summary>The state that a word names; null if it names none.</summary>
    public static SystemState? Of(string word) => Words.Find(word);
}
