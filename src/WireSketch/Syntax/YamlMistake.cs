using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>
/// What is wrong where the parser stopped, decided by the place and by what stands there: the sentences of the parser are its own
/// affair and may change with it.
/// </summary>
internal static class YamlMistake
{
    /// <summary>The mistake in the words of somebody who has never heard of a scanner, and what to do.</summary>
    /// <param name="file">The file.</param>
    /// <param name="text">Its text, as it was read.</param>
    /// <param name="start">Where the stretch begins that could not be read.</param>
    /// <param name="end">Where it ends.</param>
    /// <param name="at">Where the parser stopped.</param>
    /// <returns>The sentence, the help, and whether a space that is missing behind a colon may be the cause.</returns>
    internal static (string Message, string Help, bool MayLackSpace) At(SourceFile file, string text, int start, int end, int at)
    {
        var here = at < end ? text[at] : '\0';
        var context = Context(text, start, at);
        if (context.Quote is '"' || here == '"')
        {
            var opens = context.Quote is '"' ? context.Opens : at;
            return HasEscape(text, opens, end)
                ? ("a backslash within double quotes begins an escape, and this one is none",
                    "use single quotes, or write the backslash twice", false)
                : ("this text in quotes does not end where it should", "put the closing quotation mark on the same line", false);
        }

        if (context.Quote is not null || here == '\'')
        {
            return ("this text in quotes does not end where it should", "put the closing quotation mark on the same line", false);
        }

        var before = Before(text, start, at);
        var isFirst = before < start || text[before] is '\n' or '\r';
        var isEntry = here == '-' && (at + 1 >= end || char.IsWhiteSpace(text[at + 1]));
        return here switch
        {
            '-' when isEntry && !isFirst && context.Depth == 0 =>
                ("a list cannot begin behind a key on the same line",
                 "put each \"- \" on a line of its own below the key, or write [one, two]; text that is a dash goes in quotes", false),
            '@' or '`' or '%' => ($"a text cannot begin with {here}", "put the text in quotes", false),
            '&' or '*' => ("& and * at the beginning name a value in YAML, and this is no such name", "put the text in quotes", false),
            '!' => ("! at the beginning marks a tag in YAML, which a spec does not use", "put the text in quotes", false),
            '|' or '>' when context.Depth == 0 => ("the text below | or > does not begin as it should",
                "write | alone behind the colon, and indent every line of the text alike", false),
            '#' => ("a comment stands where it cannot", "put the comment on a line of its own, with a space before its #", false),
            _ when context.Depth > 0 => InBrackets(here),
            ':' or '?' => SecondColon,
            ',' or ']' or '}' or '[' or '{' when !isFirst => ($"a value is expected here, and {here} begins none",
                "write the value, or put it in quotes if it begins like that", false),
            _ when isFirst && here != '\0' => file.Line(file.LineAt(at)).ToString().Contains(':', StringComparison.Ordinal)
                ? ("this line fits nothing before it: it is indented differently from its neighbors, or its colon is missing",
                    "indent it like the entries beside it, and write key: value", true)
                : ("this line has no colon, so it is neither a key nor a value", "write key: value", true),
            _ when !isFirst && here != '\0' && text[before] is '"' or '\'' or ']' or '}' =>
                ("something stands behind the end of this value", "leave it out, or put the whole text in quotes", false),
            '\0' => ("a value is expected here, and there is none", "write the value", false),
            _ => SecondColon,
        };
    }

    private static (string Message, string Help, bool MayLackSpace) SecondColon =>
        ("a second colon stands in this value, or this line is indented wrongly",
         "put the text in quotes if the colon belongs to it; otherwise give the key a line of its own, indented like its neighbors", true);

    private static (string Message, string Help, bool MayLackSpace) InBrackets(char here) => here is ',' or ']' or '}'
        ? ($"a value is expected here, and {here} begins none", "write the value, or put it in quotes if it begins like that", false)
        : ("a comma or the closing bracket is missing here", "entries within brackets are parted by commas: { a: 1, b: 2 }", true);

    /// <summary>Whether a place lies within quotes, where they open, and how many brackets are open there.</summary>
    private static (char? Quote, int Opens, int Depth) Context(string text, int start, int at)
    {
        var depth = 0;
        for (var i = start; i < at; i++)
        {
            switch (text[i])
            {
                case '#' when i == 0 || char.IsWhiteSpace(text[i - 1]):
                    while (i + 1 < at && text[i + 1] is not ('\n' or '\r'))
                    {
                        i++;
                    }

                    break;
                case '"' or '\'' when YamlMistakes.BeginsScalar(text, i, start):
                    var (quote, opens) = (text[i], i);
                    for (i++; i < at && (text[i] != quote || (quote == '"' && text[i - 1] == '\\')); i++)
                    {
                    }

                    if (i >= at)
                    {
                        return (quote, opens, depth);
                    }

                    break;
                case '[' or '{' when depth > 0 || YamlMistakes.BeginsScalar(text, i, start):
                    depth++;
                    break;
                case ']' or '}' when depth > 0:
                    depth--;
                    break;
            }
        }

        return (null, at, depth);
    }

    private static bool HasEscape(string text, int opens, int end)
    {
        for (var i = opens + 1; i < end && text[i] != '"'; i++)
        {
            if (text[i] == '\\')
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The last character before a place that is no blank; one before the stretch if there is none.</summary>
    private static int Before(string text, int start, int at)
    {
        var before = at - 1;
        while (before >= start && text[before] is ' ' or '\t')
        {
            before--;
        }

        return before;
    }
}
