using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace WireSketch.Mutations;

/// <summary>
/// The changes that a node of code can take, each by name. A change is asked of the node as it stands, or with its children changed
/// already.
/// </summary>
internal static class Operators
{
    private static readonly Dictionary<SyntaxKind, SyntaxKind[]> Binary = new()
    {
        [SyntaxKind.LessThanExpression] = [SyntaxKind.LessThanOrEqualExpression, SyntaxKind.GreaterThanExpression],
        [SyntaxKind.LessThanOrEqualExpression] = [SyntaxKind.LessThanExpression, SyntaxKind.GreaterThanExpression],
        [SyntaxKind.GreaterThanExpression] = [SyntaxKind.GreaterThanOrEqualExpression, SyntaxKind.LessThanExpression],
        [SyntaxKind.GreaterThanOrEqualExpression] = [SyntaxKind.GreaterThanExpression, SyntaxKind.LessThanExpression],
        [SyntaxKind.EqualsExpression] = [SyntaxKind.NotEqualsExpression],
        [SyntaxKind.NotEqualsExpression] = [SyntaxKind.EqualsExpression],
        [SyntaxKind.AddExpression] = [SyntaxKind.SubtractExpression],
        [SyntaxKind.SubtractExpression] = [SyntaxKind.AddExpression],
        [SyntaxKind.MultiplyExpression] = [SyntaxKind.DivideExpression],
        [SyntaxKind.DivideExpression] = [SyntaxKind.MultiplyExpression],
        [SyntaxKind.LogicalAndExpression] = [SyntaxKind.LogicalOrExpression],
        [SyntaxKind.LogicalOrExpression] = [SyntaxKind.LogicalAndExpression],
    };

    private static readonly Dictionary<string, string> Methods = new(StringComparer.Ordinal)
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["MinBy"] = "MaxBy",
        ["MaxBy"] = "MinBy",
        ["First"] = "Last",
        ["Last"] = "First",
        ["FirstOrDefault"] = "LastOrDefault",
        ["LastOrDefault"] = "FirstOrDefault",
        ["Any"] = "All",
        ["All"] = "Any",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
        ["Floor"] = "Ceiling",
        ["Ceiling"] = "Floor",
    };

    /// <summary>The names of the changes that a node can take.</summary>
    public static IEnumerable<string> Of(SyntaxNode node, IReadOnlyDictionary<string, string[]> enums) => node switch
    {
        BinaryExpressionSyntax b when Binary.TryGetValue(b.Kind(), out var kinds) && !IsText(b.Left) && !IsText(b.Right) =>
            kinds.Select(k => k.ToString()),
        LiteralExpressionSyntax { Token.Value: double } => ["larger by a tenth", "smaller by a tenth"],
        LiteralExpressionSyntax { Token.Value: int } => ["one more", "one less"],
        LiteralExpressionSyntax l when l.IsKind(SyntaxKind.TrueLiteralExpression)
            || l.IsKind(SyntaxKind.FalseLiteralExpression) => ["other truth"],
        PrefixUnaryExpressionSyntax p when p.IsKind(SyntaxKind.UnaryMinusExpression)
            && p.Operand is not LiteralExpressionSyntax => ["without minus"],
        PrefixUnaryExpressionSyntax p when p.IsKind(SyntaxKind.LogicalNotExpression) => ["without not"],
        ConditionalExpressionSyntax => ["other branch"],
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax m } when Methods.ContainsKey(m.Name.Identifier.Text) => ["other method"],
        MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax type } m when enums.TryGetValue(
            type.Identifier.Text, out var values)
            && values.Contains(m.Name.Identifier.Text)
            && values.Length > 1 => ["other value"],
        IfStatementSyntax { Condition: not LiteralExpressionSyntax } => ["negated condition"],
        ExpressionStatementSyntax { Expression: AssignmentExpressionSyntax a } when a.IsKind(SyntaxKind.AddAssignmentExpression)
            || a.IsKind(SyntaxKind.SubtractAssignmentExpression) => ["other step", "removed"],
        ExpressionStatementSyntax { Expression: InvocationExpressionSyntax or AssignmentExpressionSyntax } => ["removed"],
        _ => [],
    };

    /// <summary>The node changed; null where the change removes it.</summary>
    public static SyntaxNode? Apply(SyntaxNode node, string change, IReadOnlyDictionary<string, string[]> enums) => node switch
    {
        BinaryExpressionSyntax b => Swap(b, Enum.Parse<SyntaxKind>(change)),
        LiteralExpressionSyntax { Token.Value: double d } =>
            Number(
                $"{(d == 0 ? (change[0] == 'l' ? 1.0 : -1.0) : change[0] == 'l' ? d * 1.1 : d * 0.9).ToString("R", System.Globalization.CultureInfo.InvariantCulture)}d"),
        LiteralExpressionSyntax { Token.Value: int i } =>
            Number((change == "one more" ? i + 1 : i - 1).ToString(System.Globalization.CultureInfo.InvariantCulture)),
        LiteralExpressionSyntax l =>
            SyntaxFactory.LiteralExpression(l.IsKind(SyntaxKind.TrueLiteralExpression)
                ? SyntaxKind.FalseLiteralExpression
                : SyntaxKind.TrueLiteralExpression),
        PrefixUnaryExpressionSyntax p => p.Operand,
        ConditionalExpressionSyntax c =>
            c.WithWhenTrue(c.WhenFalse.WithTriviaFrom(c.WhenTrue)).WithWhenFalse(c.WhenTrue.WithTriviaFrom(c.WhenFalse)),
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax m } call =>
            call.WithExpression(Renamed(m, Methods[m.Name.Identifier.Text])),
        MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax type } m =>
            Renamed(m, Next(enums[type.Identifier.Text], m.Name.Identifier.Text)),
        IfStatementSyntax i =>
            i.WithCondition(SyntaxFactory.PrefixUnaryExpression(
                SyntaxKind.LogicalNotExpression,
                SyntaxFactory.ParenthesizedExpression(i.Condition.WithoutTrivia()))),
        ExpressionStatementSyntax { Expression: AssignmentExpressionSyntax a } s when change == "other step" =>
            s.WithExpression(Stepped(a)),
        ExpressionStatementSyntax => null,
        _ => throw new ArgumentException($"{change} is no change of {node.Kind()}", nameof(change)),
    };

    private static bool IsText(ExpressionSyntax e) =>
        e is InterpolatedStringExpressionSyntax || e.IsKind(SyntaxKind.StringLiteralExpression)
            || (e is BinaryExpressionSyntax b && b.IsKind(SyntaxKind.AddExpression) && (IsText(b.Left) || IsText(b.Right)));

    private static ExpressionSyntax Number(string text) => SyntaxFactory.ParenthesizedExpression(SyntaxFactory.ParseExpression(text));

    private static BinaryExpressionSyntax Swap(BinaryExpressionSyntax b, SyntaxKind kind)
    {
        // Parentheses keep the operands whole where the new operator binds otherwise.
        var model = SyntaxFactory.BinaryExpression(
            kind,
            SyntaxFactory.ParenthesizedExpression(b.Left.WithoutTrivia()),
            SyntaxFactory.ParenthesizedExpression(b.Right.WithoutTrivia()));
        return model.WithOperatorToken(model.OperatorToken.WithTriviaFrom(b.OperatorToken));
    }

    private static MemberAccessExpressionSyntax Renamed(MemberAccessExpressionSyntax m, string name) =>
        m.WithName(m.Name is GenericNameSyntax g ? g.WithIdentifier(SyntaxFactory.Identifier(name)) : SyntaxFactory.IdentifierName(name));

    private static string Next(string[] values, string value) => values[(Array.IndexOf(values, value) + 1) % values.Length];

    private static AssignmentExpressionSyntax Stepped(AssignmentExpressionSyntax a) => SyntaxFactory.AssignmentExpression(
        a.IsKind(SyntaxKind.AddAssignmentExpression) ? SyntaxKind.SubtractAssignmentExpression : SyntaxKind.AddAssignmentExpression,
        a.Left,
        a.Right);
}
