using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WireSketch.Mutations;

/// <summary>A copy of the tree that holds all mutants behind one switch, built once.</summary>
internal sealed partial class MutatedTree(string root, string copy, IReadOnlyDictionary<string, string[]> enums)
{
    /// <summary>
    /// Read once: MUTANT is the number of the mutant that is on; with MUTANTS_REACHED, every number that is asked for is written down.
    /// </summary>
    private const string Switch = """
        namespace Mutants
        {
            internal static class Switch
            {
                private static readonly int on = int.Parse(System.Environment.GetEnvironmentVariable("MUTANT") ?? "0", System.Globalization.CultureInfo.InvariantCulture);
                private static readonly string reached = System.Environment.GetEnvironmentVariable("MUTANTS_REACHED");
                private static readonly System.Collections.Concurrent.ConcurrentDictionary<int, bool> asked = Open();

                public static bool Is(int number)
                {
                    if (asked != null) { asked.TryAdd(number, true); }
                    return number == on;
                }

                private static System.Collections.Concurrent.ConcurrentDictionary<int, bool> Open()
                {
                    if (reached == null) { return null; }
                    System.AppDomain.CurrentDomain.ProcessExit += (_, _) =>
                        System.IO.File.AppendAllText(reached, string.Concat(System.Linq.Enumerable.Select(asked.Keys, k => k + "\n")));
                    return new();
                }
            }
        }
        """;

    private static readonly string[] TestProjects = ["WireSketch.Tests", "WireSketch.Drawing.Tests", "WireSketch.Cli.Tests"];

    /// <summary>The test programs of the copy.</summary>
    public IEnumerable<string> Programs => TestProjects.Select(p => Path.Combine(copy, "tests", p, "bin/Debug/net10.0", p + ".dll"));

    /// <summary>Copies what git knows of, and what is new and not ignored.</summary>
    public void Copy()
    {
        foreach (var file in Run("git", root, "ls-files", "--cached", "--others", "--exclude-standard").Output.Split(
            '\n', StringSplitOptions.RemoveEmptyEntries))
        {
            var from = Path.Combine(root, file);
            if (File.Exists(from))
            {
                var to = Path.Combine(copy, file);
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(from, to, overwrite: true);
            }
        }
    }

    /// <summary>Writes the mutants into the sources of the copy, and the switch into both libraries.</summary>
    public void Write(IEnumerable<Mutant> mutants)
    {
        foreach (var library in new[] { "WireSketch", "WireSketch.Drawing" })
        {
            File.WriteAllText(
                Path.Combine(copy, "src", library, "MutantSwitch.cs"),
                "#nullable disable\n#pragma warning disable\n" + Switch);
        }

        foreach (var file in mutants.GroupBy(m => m.File, StringComparer.Ordinal))
        {
            var tree = CSharpSyntaxTree.ParseText(File.ReadAllText(Path.Combine(root, file.Key))).GetRoot();
            var bySpan = file.ToLookup(m => (m.Start, m.Length));
            var nodes = tree.DescendantNodes()
                .Where(n => bySpan[(n.SpanStart, n.Span.Length)].Any(m => Operators.Of(n, enums).Contains(m.Change)))
                .ToArray();
            var mutated = tree.ReplaceNodes(nodes, (original, rewritten) => bySpan[(original.SpanStart, original.Span.Length)]
                .Where(m => Operators.Of(original, enums).Contains(m.Change))
                .Aggregate(rewritten, (node, m) => Switched(node, rewritten, m)));
            File.WriteAllText(Path.Combine(copy, file.Key), mutated.ToFullString());
        }
    }

    /// <summary>Builds the copy; the numbers of mutants that do not compile, none if it is built.</summary>
    public IReadOnlySet<int> Build()
    {
        var broken = new SortedSet<int>();
        foreach (var project in new[] { "src/WireSketch.Cli" }.Concat(TestProjects.Select(p => "tests/" + p)))
        {
            var (code, output) = Run(
                "dotnet", copy, "build", project, "-v", "q", "--nologo", "-p:RunAnalyzers=false", "-p:TreatWarningsAsErrors=false",
                "-p:EnforceCodeStyleInBuild=false", "-clp:ErrorsOnly");
            if (code == 0)
            {
                continue;
            }

            foreach (var error in ErrorPlace().Matches(output).DistinctBy(m => m.Value))
            {
                broken.UnionWith(At(
                    error.Groups[1].Value,
                    int.Parse(error.Groups[2].ValueSpan, CultureInfo.InvariantCulture),
                    int.Parse(error.Groups[3].ValueSpan, CultureInfo.InvariantCulture)));
            }

            return broken.Count > 0
                ? broken
                : throw new InvalidOperationException($"The copy does not build, and no mutant is to blame:\n{output}");
        }

        return broken;
    }

    public static (int Code, string Output) Run(string program, string folder, params string[] arguments)
    {
        using var process =
            Process.Start(new ProcessStartInfo(program, arguments)
            {
                WorkingDirectory = folder,
                RedirectStandardOutput = true,
                RedirectStandardError = true
            })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + error.Result);
    }

    /// <summary>A node with one more change: as it was after all that came before, or changed.</summary>
    private SyntaxNode Switched(SyntaxNode sofar, SyntaxNode plain, Mutant m)
    {
        var changed = Operators.Apply(plain, m.Change, enums);
        var number = m.Number.ToString(CultureInfo.InvariantCulture);
        return sofar switch
        {
            IfStatementSyntax i =>
                i.WithCondition(SyntaxFactory.ParseExpression(
                    $"(global::Mutants.Switch.Is({number}) ? !({((IfStatementSyntax)plain).Condition}) : ({i.Condition}))")),
            StatementSyntax s =>
                SyntaxFactory.ParseStatement(
                    $"if (global::Mutants.Switch.Is({number})) {{ {changed?.ToString() ?? ""} }} else {{ "
                        + $"{s.WithoutTrivia().ToFullString()} }}")
                    .WithTriviaFrom(plain),
            _ =>
                SyntaxFactory.ParseExpression(
                    $"(global::Mutants.Switch.Is({number}) ? ({changed}) : ({sofar.WithoutTrivia().ToFullString()}))")
                    .WithTriviaFrom(plain),
        };
    }

    /// <summary>The mutants of the innermost switch around a place of the copy.</summary>
    private static IEnumerable<int> At(string file, int line, int column)
    {
        var text = CSharpSyntaxTree.ParseText(File.ReadAllText(file));
        var lines = text.GetText().Lines;
        var place = Math.Min(lines[line - 1].Start + column - 1, lines[line - 1].End);
        for (var node = text.GetRoot().FindToken(place).Parent; node is not null; node = node.Parent)
        {
            // A statement around it counts as a whole: what uses a value may be what does not compile.
            var numbers = Number().Matches(node.ToFullString())
                .Select(m => int.Parse(m.Groups[1].ValueSpan, CultureInfo.InvariantCulture))
                .ToArray();
            if (numbers.Length > 0)
            {
                return numbers;
            }
        }

        return [];
    }

    [GeneratedRegex(@"(/\S[^\n(]*\.cs)\((\d+),(\d+)\): error CS")]
    private static partial Regex ErrorPlace();

    [GeneratedRegex(@"Mutants\.Switch\.Is\((\d+)\)")]
    private static partial Regex Number();
}
