using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;

namespace WireSketch.Mutations;

/// <summary>A class of tests, as it ran without any mutant.</summary>
/// <param name="Name">With its namespace.</param>
/// <param name="Program">The test program that holds it.</param>
/// <param name="Seconds">Processor time that it took, start of the process included.</param>
/// <param name="Passes">Whether it passed: only then can it tell anything.</param>
/// <param name="Reached">The mutants that it reaches.</param>
internal sealed record TestClass(string Name, string Program, double Seconds, bool Passes, int[] Reached);

/// <summary>
/// Runs classes of tests by their own program, which starts faster than a test platform does. No program is on the path then, so that tests
/// beside a simulator, a browser or an emulator are skipped.
/// </summary>
internal sealed partial class TestRunner(MutatedTree tree, string work)
{
    private static readonly string Dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH")
        ?? (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Select(p => Path.Combine(p, "dotnet"))
            .First(File.Exists);

    /// <summary>For what waits and uses no time.</summary>
    private static readonly TimeSpan TooLong = TimeSpan.FromMinutes(20);

    /// <summary>Every class of tests, but those that look at the source itself.</summary>
    public IEnumerable<(string Program, string Name)> Classes() =>
        tree.Programs.SelectMany(p => MutatedTree.Run(Dotnet, work, p, "-list", "classes", "-noColor").Output
            .Split('\n', StringSplitOptions.TrimEntries)
            .Where(l => l.StartsWith("WireSketch.", StringComparison.Ordinal) && !l.Contains(".House.", StringComparison.Ordinal))
            .Select(l => (p, l)));

    /// <summary>Runs one class without a mutant and notes what it reaches.</summary>
    public TestClass Measure(string program, string name)
    {
        var reached = Path.Combine(work, $"reached.{name}");
        File.Delete(reached);
        var (failed, seconds) = Run(program, [name], 0, double.PositiveInfinity, reached);
        var numbers = File.Exists(reached)
            ? File.ReadAllLines(reached).Select(n => int.Parse(n, CultureInfo.InvariantCulture)).Distinct().Order().ToArray()
            : [];
        File.Delete(reached);
        return new(name, program, seconds ?? 0, failed is null && seconds is not null, numbers);
    }

    /// <summary>The end of a mutant: the nearest classes run first, and the first test that fails ends it.</summary>
    public Verdict Judge(Mutant mutant, IEnumerable<TestClass> classes, string? reason)
    {
        var watch = Stopwatch.StartNew();
        var reaching = classes.Where(c => c.Passes && c.Reached.Contains(mutant.Number))
            .OrderBy(c => Distance(c, mutant))
            .ThenBy(c => c.Seconds)
            .ToArray();
        if (reaching.Length == 0)
        {
            return new(mutant, Outcome.NotReached, null, 0, reason);
        }

        foreach (var batch in Batches(reaching))
        {
            foreach (var program in batch.GroupBy(c => c.Program, StringComparer.Ordinal))
            {
                var (failed, seconds) = Run(
                    program.Key, [.. program.Select(c => c.Name)], mutant.Number, 10 + (4 * program.Sum(c => c.Seconds)), null);
                if (failed is not null || seconds is null)
                {
                    return new(mutant, seconds is null ? Outcome.TimedOut : Outcome.Killed, failed, watch.Elapsed.TotalSeconds, reason);
                }
            }
        }

        return new(mutant, Outcome.Survived, null, watch.Elapsed.TotalSeconds, reason);
    }

    /// <summary>Few seconds first, then more, then all: most mutants end in the first batch.</summary>
    private static IEnumerable<TestClass[]> Batches(TestClass[] classes)
    {
        var batch = new List<TestClass>();
        var most = 4.0;
        foreach (var c in classes)
        {
            if (batch.Count > 0 && batch.Sum(b => b.Seconds) + c.Seconds > most)
            {
                yield return [.. batch];
                batch.Clear();
                most *= 4;
            }

            batch.Add(c);
        }

        yield return [.. batch];
    }

    /// <summary>0 by name, 1 in the folder, 2 in the stage, 3 elsewhere.</summary>
    private static int Distance(TestClass c, Mutant m)
    {
        var stem = Path.GetFileNameWithoutExtension(m.File);
        var name = c.Name[(c.Name.LastIndexOf('.') + 1)..];
        var bare = name.Replace("Tests", "", StringComparison.Ordinal);
        return name.Contains(stem, StringComparison.Ordinal) || stem.Contains(bare, StringComparison.Ordinal) ? 0
            : c.Name.Contains($".{Path.GetFileName(Path.GetDirectoryName(m.File))}.", StringComparison.Ordinal) ? 1
            : c.Name.Contains($".{m.Stage}.", StringComparison.Ordinal) ? 2 : 3;
    }

    /// <summary>
    /// Runs classes; the first test that failed, null if all passed, and the processor time that was used; no time where it was too much.
    /// A clock
    /// on the wall would blame a mutant for whatever else the machine does.
    /// </summary>
    private (string? Failed, double? Seconds) Run(string program, string[] classes, int mutant, double most, string? reached)
    {
        var start = new ProcessStartInfo(
            Dotnet,
            [program, "-noColor", "-noLogo", "-stopOnFail", "-parallelMode", "none", .. classes.SelectMany(c => new[] { "-class", c })])
        {
            WorkingDirectory = work,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["MUTANT"] = mutant.ToString(CultureInfo.InvariantCulture);
        start.Environment["PATH"] = "";
        start.Environment.Remove("WIRESKETCH_BASELINES");
        if (reached is not null)
        {
            start.Environment["MUTANTS_REACHED"] = reached;
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEndAsync();
        var (used, clock) = (0.0, Stopwatch.StartNew());
        while (!process.WaitForExit(TimeSpan.FromSeconds(0.25)))
        {
            used = Used(process, used);
            if (used > most || clock.Elapsed > TooLong)
            {
                process.Kill(entireProcessTree: true);
                process.WaitForExit();
                return (null, null);
            }
        }

        process.WaitForExit();
        return process.ExitCode == 0
            ? (null, used)
            : (
                FailedTest().Match(output.Result) is { Success: true } m
                    ? m.Groups[1].Value
                    : $"exit code {process.ExitCode} {error.Result.Split('\n')[0]}",
                used);
    }

    /// <summary>Processor time so far; what was known before where the process has just ended.</summary>
    private static double Used(Process process, double before)
    {
        try
        {
            return process.TotalProcessorTime.TotalSeconds;
        }
        catch (InvalidOperationException)
        {
            return before;
        }
    }

    [GeneratedRegex(@"^\s*(WireSketch\.\S[^\n(]*)[^\n]*\[FAIL\]", RegexOptions.Multiline)]
    private static partial Regex FailedTest();
}
