using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>Says that a name names nothing.</summary>
internal static class References
{
    internal static Finding Finding(string name, SourceSpan at, string what, IEnumerable<string> known, string otherwise)
    {
        var list = known.ToArray();
        var nearest = Nearest.To(name, list);
        return new("spec/reference", Severity.Error, $"there is no {what} called \"{name}\"", at)
        {
            Help = nearest is not null ? $"write {nearest}, if that is what is meant"
                : list.Length is > 0 and <= 12 ? $"{otherwise}; there are {string.Join(", ", list)}" : otherwise,
            Fixes = nearest is null || at.Words != name ? [] : [new($"write {nearest}", [new(at, nearest)])],
        };
    }
}
