using System.Collections.Immutable;

namespace WireSketch.Language;

/// <summary>
/// What <c>through</c>, <c>passes</c> and <c>beside</c> may say that is judged. Only the whole of an entry counts; other words are
/// printed as they stand and judged by nobody.
/// </summary>
public static class PassageWords
{
    /// <summary>What keeps the edge of a hole in metal away from a wire.</summary>
    public static ImmutableArray<string> Guards { get; } =
    [
        "grommet", "firewall grommet", "factory grommet", "cable gland", "gland",
        "bushing", "bulkhead fitting", "feed-through stud", "rubber boot", "boot",
    ];

    /// <summary>What bends a wire whenever it is opened.</summary>
    public static ImmutableArray<string> Hinges { get; } = ["door hinge", "tailgate hinge", "trunk hinge", "hood hinge", "hinge"];

    /// <summary>What carries a wire over a hinge.</summary>
    public static ImmutableArray<string> Boots { get; } = ["rubber boot", "boot"];

    /// <summary>What lies beside a path and disturbs a signal.</summary>
    public static ImmutableArray<string> Supply { get; } = ["supply", "supply cable", "battery cable"];

    /// <summary>Whether an entry names something that guards a wire in a hole.</summary>
    public static bool IsGuard(string entry) => Guards.Contains(entry, StringComparer.OrdinalIgnoreCase);

    /// <summary>The words of a list, for the pages about keys.</summary>
    internal static string Listed(ImmutableArray<string> words) => string.Join(", ", words);
}
