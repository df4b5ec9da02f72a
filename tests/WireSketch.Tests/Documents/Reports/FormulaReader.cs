using System.Globalization;

namespace WireSketch.Tests.Documents.Reports;

/// <summary>
/// Works out a formula of the report by itself: it knows nothing of the program. Numbers and symbols, + − · / ^ ² brackets, π, and the
/// functions
/// √ min max sum ceil ln log10. A symbol may stand for several values, which only sum may take.
/// </summary>
internal sealed class FormulaReader
{
    private readonly string text;
    private readonly IReadOnlyDictionary<string, IReadOnlyList<double>> known;
    private int at;

    private FormulaReader(string text, IReadOnlyDictionary<string, IReadOnlyList<double>> known) => (this.text, this.known) = (text, known);

    public static double Evaluate(string formula, IReadOnlyDictionary<string, IReadOnlyList<double>> known)
    {
        var reader = new FormulaReader(formula, known);
        var value = reader.Sum();
        return reader.Peek() == '\0' ? value : throw new FormatException($"\"{formula}\" goes on at {reader.at}");
    }

    private double Sum()
    {
        var value = Product();
        while (true)
        {
            switch (Peek())
            {
                case '+':
                    at++;
                    value += Product();
                    break;
                case '−':
                    at++;
                    value -= Product();
                    break;
                default:
                    return value;
            }
        }
    }

    private double Product()
    {
        var value = Power();
        while (true)
        {
            switch (Peek())
            {
                case '·':
                    at++;
                    value *= Power();
                    break;
                case '/':
                    at++;
                    value /= Power();
                    break;
                default:
                    return value;
            }
        }
    }

    private double Power()
    {
        var value = Single();
        switch (Peek())
        {
            case '²':
                at++;
                return value * value;
            case '^':
                at++;
                return Math.Pow(value, Single());
            default:
                return value;
        }
    }

    private double Single()
    {
        var c = Peek();
        if (c == '−')
        {
            at++;
            return -Single();
        }

        if (c == '(')
        {
            return Arguments().Single();
        }

        if (c == '√')
        {
            at++;
            return Math.Sqrt(Arguments().Single());
        }

        return char.IsAsciiDigit(c) ? Number() : Word();
    }

    private double Number()
    {
        var from = at;
        while (at < text.Length && (char.IsAsciiDigit(text[at]) || text[at] == '.'))
        {
            at++;
        }

        return double.Parse(text.AsSpan(from, at - from), CultureInfo.InvariantCulture);
    }

    private double Word()
    {
        var from = at;
        while (at < text.Length && (char.IsLetterOrDigit(text[at]) || text[at] == '_'))
        {
            at++;
        }

        var word = text[from..at];
        switch (word)
        {
            case "π":
                return Math.PI;
            case "sum":
                return SumOf();
            case "min":
                return Arguments().Min();
            case "max":
                return Arguments().Max();
            case "ceil":
                return Math.Ceiling(Arguments().Single());
            case "ln":
                return Math.Log(Arguments().Single());
            case "log10":
                return Math.Log10(Arguments().Single());
            default:
                return known.TryGetValue(word, out var values)
                    ? values.Single()
                    : throw new FormatException($"\"{word}\" in \"{text}\" is nowhere given");
        }
    }

    /// <summary>A symbol that stands for several values; or, in a formula with numbers, their sum written out.</summary>
    private double SumOf()
    {
        var close = text.IndexOf(')', at);
        var word = text[(at + 1)..close];
        if (!known.TryGetValue(word, out var values))
        {
            return Arguments().Single();
        }

        at = close + 1;
        return values.Sum();
    }

    private List<double> Arguments()
    {
        Take('(');
        var values = new List<double> { Sum() };
        while (Peek() == ',')
        {
            at++;
            values.Add(Sum());
        }

        Take(')');
        return values;
    }

    private void Take(char c) => at = Peek() == c ? at + 1 : throw new FormatException($"no {c} at {at} of \"{text}\"");

    private char Peek()
    {
        while (at < text.Length && text[at] == ' ')
        {
            at++;
        }

        return at < text.Length ? text[at] : '\0';
    }
}
