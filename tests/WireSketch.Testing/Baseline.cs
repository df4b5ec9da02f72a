namespace WireSketch.Testing;

/// <summary>
/// Texts that are committed and compared. They are written only on request, with WIRESKETCH_BASELINES=write, and then read by a person.
/// </summary>
public static class Baseline
{
    private static readonly bool Write = Environment.GetEnvironmentVariable("WIRESKETCH_BASELINES") == "write";

    /// <summary>Compares a text with the baseline of that path, counted from the root of the repository; throws if they differ.</summary>
    public static void Match(string path, string actual)
    {
        var file = Path.Combine(Repository.Root, path);
        if (Write)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, actual);
            return;
        }

        if (!File.Exists(file))
        {
            throw new BaselineException($"There is no baseline {path}. Run once with WIRESKETCH_BASELINES=write and read what it wrote.");
        }

        var expected = File.ReadAllText(file);
        if (expected != actual)
        {
            throw new BaselineException(Difference(path, expected.Split('\n'), actual.Split('\n')));
        }
    }

    private static string Difference(string path, string[] expected, string[] actual)
    {
        var line = 0;
        while (line < expected.Length && line < actual.Length && expected[line] == actual[line])
        {
            line++;
        }

        return $"""
            {path} differs from its baseline from line {line + 1} on ({expected.Length} lines expected, {actual.Length} found).
              expected: {(line < expected.Length ? expected[line] : "(the end)")}
              found:    {(line < actual.Length ? actual[line] : "(the end)")}
            Run with WIRESKETCH_BASELINES=write if the change is meant, and read the difference.
            """;
    }
}

/// <summary>A text differs from its baseline.</summary>
public sealed class BaselineException(string message) : Exception(message);
