using System.CommandLine;
using System.Text;
using WireSketch.Documents.Findings;
using WireSketch.Rules;

namespace WireSketch.Cli.Commands;

/// <summary><c>explain</c>: what a rule is about; without one, the list of all.</summary>
internal static class ExplainCommand
{
    public static Command Make(CliContext surroundings)
    {
        var rule = new Argument<string?>("rule")
        {
            HelpName = "rule",
            Description = "Id of the rule, such as supply/fuse-too-far; without it all rules are listed.",
            Arity = ArgumentArity.ZeroOrOne
        };
        rule.CompletionSources.Add([.. RuleBook.Cards.Select(c => c.Id)]);
        var command = new Command("explain", "Says why a rule matters, what it rests on, and how to mend it, with an example.") { rule };
        command.SetAction((parse, _) =>
        {
            surroundings.Out.Write(parse.GetValue(rule) is { } id ? Explain(id) : List());
            return Task.FromResult(ExitCode.Clean);
        });
        return command;
    }

    private static string List()
    {
        var entries = RuleBook.Cards;
        var width = entries.Max(e => e.Id.Length);
        var text = new StringBuilder();
        foreach (var card in entries)
        {
            text.Append(card.Id.PadRight(width + 2)).Append(FindingsReport.Word(card.Severity).PadRight(9)).Append(card.Title).Append('\n');
        }

        return text.ToString();
    }

    private static string Explain(string id)
    {
        if (RuleBook.Find(id) is { } card)
        {
            return $"""
                {card.Id} ({FindingsReport.Word(card.Severity)})
                {card.Title}

                {Wrap(card.Why)}

                Basis: {card.Basis}

                This is found:

                {Indented(card.Bad)}

                This is not:

                {Indented(card.Good)}

                """.ReplaceLineEndings("\n");
        }

        if (FormerRuleIds.NowOf(id) is { } now)
        {
            return $"{id} is called {now} now.\n\n{Explain(now)}";
        }

        var near = RuleBook.NearestTo(id);
        throw new UserException($"there is no rule {id}{(near is null ? "; wiresketch explain lists them" : $"; did you mean {near}?")}");
    }

    private static string Indented(string lines) =>
        string.Join('\n', lines.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n').Select(l => l.Length == 0 ? l : "  " + l));

    /// <summary>Sentences on lines that fit a terminal.</summary>
    private static string Wrap(string words)
    {
        const int width = 96;
        var text = new StringBuilder();
        var line = 0;
        foreach (var word in words.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries))
        {
            if (line > 0 && line + 1 + word.Length > width)
            {
                text.Append('\n');
                line = 0;
            }

            text.Append(line > 0 ? " " : "").Append(word);
            line += (line > 0 ? 1 : 0) + word.Length;
        }

        return text.ToString();
    }
}
