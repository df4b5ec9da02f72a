using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WireSketch.Mutations;

/// <summary>Every change that the code of a tree can take, and a sample of it that the same seed repeats.</summary>
internal sealed class MutantFinder(string root)
{
    /// <summary>The values of every enum of the source, by its name.</summary>
    public IReadOnlyDictionary<string, string[]> Enums { get; } = FindEnums(root);

    public static IEnumerable<string> SourcesIn(string folder) => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
        .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/bin/", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    /// <summary>All mutants of a stage, in an order that the seed decides.</summary>
    public Mutant[] Shuffled(Stage stage, int seed)
    {
        var all = SourcesIn(Path.Combine(root, stage.Folder)).SelectMany(f => In(stage, f)).ToArray();
#pragma warning disable CA5394 // A sample, not a secret.
        new Random(seed).Shuffle(all);
#pragma warning restore CA5394
        return all;
    }

    private IEnumerable<Mutant> In(Stage stage, string file)
    {
        var tree = CSharpSyntaxTree.ParseText(File.ReadAllText(file));
        foreach (var node in tree.GetRoot().DescendantNodes())
        {
            foreach (var change in Operators.Of(node, Enums).Where(_ => CanSwitch(node)))
            {
                var shown = node is IfStatementSyntax i ? i.Condition : node;
                var after = node is IfStatementSyntax f ? $"!({f.Condition})" : Operators.Apply(node, change, Enums)?.ToString() ?? "";
                yield return new(
                    0,
                    stage.Name,
                    Path.GetRelativePath(root, file),
                    tree.GetLineSpan(shown.Span).StartLinePosition.Line + 1,
                    node.SpanStart,
                    node.Span.Length,
                    change, OneLine(shown.ToString()), OneLine(after));
            }
        }
    }

    /// <summary>
    /// Whether a node may stand twice behind a switch: not where a constant is asked for, and not where it declares a variable, which would
    /// then be declared twice.
    /// </summary>
    private static bool CanSwitch(SyntaxNode node) =>
        !node.Ancestors()
            .Any(a => a is AttributeSyntax or ParameterSyntax or PatternSyntax or EnumMemberDeclarationSyntax or SwitchLabelSyntax
                || (a is BaseFieldDeclarationSyntax f && f.Modifiers.Any(SyntaxKind.ConstKeyword))
                || (a is LocalDeclarationStatementSyntax l && l.Modifiers.Any(SyntaxKind.ConstKeyword)))
        && !Declares(node is IfStatementSyntax i ? i.Condition : node);

    private static bool Declares(SyntaxNode node) => node
        .DescendantNodesAndSelf(n => n is not LambdaExpressionSyntax)
        .Any(n => n is VariableDesignationSyntax or DeclarationExpressionSyntax);

    private static string OneLine(string code) =>
        string.Join(' ', code.Split((char[])[' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries));

    private static Dictionary<string, string[]> FindEnums(string root) => SourcesIn(Path.Combine(root, "src"))
        .SelectMany(f => CSharpSyntaxTree.ParseText(File.ReadAllText(f)).GetRoot().DescendantNodes().OfType<EnumDeclarationSyntax>())
        .GroupBy(e => e.Identifier.Text, StringComparer.Ordinal)
        .ToDictionary(g => g.Key, g => g.First().Members.Select(m => m.Identifier.Text).ToArray(), StringComparer.Ordinal);
}
