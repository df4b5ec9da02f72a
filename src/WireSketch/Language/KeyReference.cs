using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace WireSketch.Language;

/// <summary>The reference page of all keys, as Markdown.</summary>
internal static class KeyReference
{
    /// <summary>The page; the same every time.</summary>
    public static string Write()
    {
        var language = LanguageReference.Whole;
        var page = new StringBuilder();
        page.Append("""
            # Keys of a spec

            Made from the lines of code that read a spec; do not edit. Every quantity is written with its unit. A value marked
            *common practice* has no published source.

            ## Top level


            """);
        Table(page, language.Top);
        foreach (var entry in language.Top.Where(e => e.Name is not ("gear" or "parts")))
        {
            Section(page, entry, $"`{entry.Name}`", 2);
        }

        page.Append(
            "\n## Gear\n\n`is` names the kind, which decides the terminals and the keys. It may stand in the part alone. Every device "
                + "may also have these keys:\n\n");
        Table(page, language.Common);
        foreach (var kind in language.Kinds)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n### {kind.Word}\n\n{Capital(kind.Says)}. Terminals: {Terminals(kind)}.\n");
            if (kind.Keys.Length > 0)
            {
                page.Append('\n');
                Table(page, kind.Keys);
            }

            foreach (var entry in kind.Keys)
            {
                Section(page, entry, $"{kind.Word}: `{entry.Name}`", 4);
            }
        }

        return page.ToString().ReplaceLineEndings("\n");
    }

    private static void Section(StringBuilder page, KeyEntry entry, string title, int level)
    {
        if (entry.Inside.IsEmpty)
        {
            return;
        }

        var each = entry.Form switch
        {
            KeyForm.Named => "For each, by a name of your choice:",
            KeyForm.List => "For each, behind a dash:",
            KeyForm.MapOrText => "A few words, or a map:",
            _ => "Its keys:",
        };
        page.Append(CultureInfo.InvariantCulture, $"\n{new string('#', level)} {title}\n\n{Capital(entry.Holds)}. {each}\n\n");
        Table(page, entry.Inside);
        foreach (var inner in entry.Inside)
        {
            Section(page, inner, $"{title} `{inner.Name}`", Math.Min(level + 1, 6));
        }
    }

    private static void Table(StringBuilder page, ImmutableArray<KeyEntry> entries)
    {
        page.Append("| key | takes | what it holds | if left out |\n| --- | --- | --- | --- |\n");
        foreach (var entry in entries)
        {
            var otherwise = entry.Required ? "*required*"
                : entry.OneOf.Length > 0 ? $"at most one of {List(entry.OneOf)}"
                : entry.Otherwise ?? "–";
            page.Append(CultureInfo.InvariantCulture, $"| `{entry.Name}` | {Takes(entry)} | {Cell(entry.Holds)} | {Cell(otherwise)} |\n");
        }
    }

    private static string Takes(KeyEntry entry) => entry.Form switch
    {
        KeyForm.Amount => $"`{entry.Example}`",
        KeyForm.AmountOrAuto => $"`{entry.Example}` or `auto`",
        KeyForm.Range or KeyForm.Multiple or KeyForm.Size or KeyForm.SizeRange or KeyForm.Table or KeyForm.Numbered => $"`{entry.Example}`",
        KeyForm.Word => List(entry.Words),
        KeyForm.WordList => $"one or a list of {List(entry.Words)}",
        KeyForm.TextList => "text, or a list of texts",
        KeyForm.Flag => "`true` or `false`",
        KeyForm.Count when entry.Least == entry.Most => $"`{entry.Least.ToString(CultureInfo.InvariantCulture)}`",
        KeyForm.Count => string.Create(CultureInfo.InvariantCulture, $"a whole number, {entry.Least} to {entry.Most}"),
        KeyForm.Number => $"a number, such as `{entry.Example}`",
        KeyForm.Map => "a map",
        KeyForm.Named => "a map of names",
        KeyForm.List => "a list",
        KeyForm.MapOrText => "text, or a map",
        _ => "text",
    };

    private static string Terminals(KindEntry kind)
    {
        var named = kind.Keys.Where(k => k.Form == KeyForm.Named).Select(k => $"those named under `{k.Name}`");
        var counted = kind.Keys.Where(k => k.Form == KeyForm.Count && k.Name is "outputs" or "cavities")
            .Select(k => k.Name == "outputs" ? "`out.1` and so on" : "one for each cavity");
        var fixedOnes = kind.Terminals.Where(t => counted.All(_ => !t.StartsWith("out.", StringComparison.Ordinal) && t != "1"))
            .Select(t => t.Length == 0 ? "itself" : $"`{t}`");
        return string.Join(", ", fixedOnes.Concat(counted).Concat(named));
    }

    private static string List(IEnumerable<string> words) => string.Join(", ", words.Select(w => $"`{w}`"));

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
