namespace WireSketch.Language;

/// <summary>A range as people write it: <c>0.1 V to 5 V</c>.</summary>
internal static class RangeWords
{
    public static bool Split(string words, out string first, out string last)
    {
        var to = words.IndexOf(" to ", StringComparison.Ordinal);
        (first, last) = to < 0 ? (words, "") : (words[..to].Trim(), words[(to + 4)..].Trim());
        return to >= 0;
    }
}
