namespace WireSketch.Topology;

/// <summary>Words for what keeps the edge of a hole in metal away from a wire.</summary>
public static class GrommetWords
{
    private static readonly string[] Words = ["grommet", "gland", "bushing", "bulkhead", "pass-through", "pass through", "feed-through", "feedthrough", "boot", "stud"];

    /// <summary>Whether a text names such a thing.</summary>
    public static bool Say(string text) => Words.Any(w => text.Contains(w, StringComparison.OrdinalIgnoreCase));
}
