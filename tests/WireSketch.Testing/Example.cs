using WireSketch.Text;

namespace WireSketch.Testing;

/// <summary>Makes whole specs of the fragments that rule cards and tests show.</summary>
public static class Example
{
    /// <summary>Puts the two lines before a fragment that every spec needs, where it has them not.</summary>
    public static string Whole(string fragment)
    {
        var version = HasKey(fragment, "wiresketch") ? "" : "wiresketch: 1\n";
        var job = HasKey(fragment, "job") ? "" : "job: { title: Example }\n";
        return version + job + (fragment.EndsWith('\n') ? fragment : fragment + "\n");
    }

    /// <summary>A fragment as a whole file, named as an example.</summary>
    public static SourceFile File(string fragment) => new("example.wsk.yaml", Whole(fragment));

    private static bool HasKey(string fragment, string key) =>
        fragment.Split('\n').Any(line => line.StartsWith(key + ":", StringComparison.Ordinal));
}
