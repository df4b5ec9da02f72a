using System.Text;
using WireSketch.Diagnostics;

namespace WireSketch.Rules;

/// <summary>Writes the reference page of all findings.</summary>
internal static class RulePages
{
    /// <summary>The page in Markdown: a table of all, then for each why it matters, what it rests on, and its two examples.</summary>
    public static string Write()
    {
        var page = new StringBuilder("""
            # Findings

            Made from the cards beside the rules' code; do not edit. Every finding has a stable id `group/slug`. An `error` is unsafe or
            cannot work, a `warning` is likely trouble, an `advice` is good practice and may stand. A finding that was looked at is
            accepted with a reason under `accept`; what is wrong with the text itself cannot be accepted. Limits marked *common practice*
            have no published source. Every example is compiled by the tests: a line that ends with `#!` and an id is where that finding
            is reported. The lines `wiresketch: 1` and `job:` are left out.

            None of this replaces the vehicle maker's instructions, local codes or licensed practice.


            """.ReplaceLineEndings("\n"));
        foreach (var group in RuleBook.Cards.GroupBy(c => c.Id.Split('/')[0]))
        {
            page.Append("## ").Append(group.Key).Append("\n\n| id | severity | found |\n| --- | --- | --- |\n");
            foreach (var card in group)
            {
                page.Append($"| [`{card.Id}`](#{Anchor(card.Id)}) | {Word(card.Severity)} | {card.Title} |\n");
            }

            page.Append('\n');
            foreach (var card in group)
            {
                Add(page, card);
            }
        }

        return page.ToString().TrimEnd('\n') + "\n";
    }

    private static void Add(StringBuilder page, RuleCard card) => page
        .Append($"### {card.Id}\n\n**{card.Title}** ({Word(card.Severity)})\n\n")
        .Append(card.Why.ReplaceLineEndings("\n").TrimEnd('\n'))
        .Append($"\n\nBasis: {card.Basis}.\n\nThis is found:\n\n```yaml\n")
        .Append(card.Bad.ReplaceLineEndings("\n").TrimEnd('\n'))
        .Append("\n```\n\nThis is not:\n\n```yaml\n")
        .Append(card.Good.ReplaceLineEndings("\n").TrimEnd('\n'))
        .Append("\n```\n\n");

    private static string Anchor(string id) => id.Replace("/", "", StringComparison.Ordinal);

    private static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "advice",
    };
}
