using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Text;

namespace WireSketch.Rules;

/// <summary>What a limit or a judgment rests on.</summary>
public abstract record Basis
{
    private Basis()
    {
    }

    /// <summary>A text that anybody can look up.</summary>
    public sealed record Published(string Source) : Basis
    {
        public override string ToString() => Source;
    }

    /// <summary>What careful installers do; no published source.</summary>
    public sealed record Practice : Basis
    {
        public override string ToString() => "common practice, no published source";
    }

    /// <summary>It follows from physics or from the wiring itself.</summary>
    public sealed record Reasoning(string Says) : Basis
    {
        public override string ToString() => Says;
    }
}

/// <summary>Everything that is to be said about a rule; <c>explain</c>, the reference page and the editor show it.</summary>
/// <param name="Id"><c>group/slug</c>; says what is wrong.</param>
/// <param name="Severity">The highest severity of its findings.</param>
/// <param name="Title">What is wrong, in a short sentence.</param>
/// <param name="Why">Why it matters, and what usually mends it.</param>
/// <param name="Basis">What its limits rest on.</param>
/// <param name="Bad">A spec without its heading that fails; each expected finding is marked <c>#! id</c> on its line.</param>
/// <param name="Good">The same, mended.</param>
public sealed record RuleCard(string Id, Severity Severity, string Title, string Why, Basis Basis, string Bad, string Good);

/// <summary>One rule. It looks at an install and names every place that breaks it.</summary>
public abstract class Rule
{
    public abstract RuleCard Card { get; }

    /// <summary>Every place that breaks the rule, in the order of the spec.</summary>
    public abstract IEnumerable<Finding> Check(InstalledSystem install);

    /// <summary>A finding of this rule.</summary>
    /// <param name="at">The smallest stretch of the file that shows it.</param>
    /// <param name="message">One sentence with the numbers, each value typed and tagged with the part it plays.</param>
    /// <param name="help">What to change, as it would be typed.</param>
    /// <param name="severity">If it differs from the card's.</param>
    /// <param name="subjects">Ids of what it concerns, the chief one first.</param>
    protected Finding Report(SourceSpan at, FindingText message, string? help, Severity? severity, params ReadOnlySpan<string> subjects) =>
        new(Card.Id, severity ?? Card.Severity, message.ToString(), at)
        {
            Help = help,
            Values = message.Values,
            State = message.State,
            Subjects = [.. subjects.ToArray().Distinct(StringComparer.Ordinal)],
        };

    /// <summary>A finding of this rule whose help may ask for sizes.</summary>
    protected Finding Report(
        SourceSpan at, FindingText message, FindingText help, Severity? severity, params ReadOnlySpan<string> subjects) =>
        Report(at, message, help.ToString(), severity, subjects) with { HelpText = help.Wants.IsEmpty ? null : help };

    /// <summary>A finding of this rule, at the card's severity.</summary>
    protected Finding Report(SourceSpan at, FindingText message, string? help, params ReadOnlySpan<string> subjects) =>
        Report(at, message, help, null, subjects);

    /// <summary>A finding of this rule whose help may ask for sizes, at the card's severity.</summary>
    protected Finding Report(SourceSpan at, FindingText message, FindingText help, params ReadOnlySpan<string> subjects) =>
        Report(at, message, help, null, subjects);
}
