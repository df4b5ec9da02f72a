using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Text;

namespace WireSketch.Documents.Reports;

/// <summary>
/// The working for one subject as it is written down: what went in, each with its origin, then what came out, each with its formula.
/// </summary>
internal sealed class ReportBuilder
{
    /// <summary>Digits that are printed: enough that what is printed multiplies out.</summary>
    public const int Digits = 5;

    /// <summary>Digits of volts that are taken from each other.</summary>
    public const int FineDigits = 6;

    private readonly ImmutableArray<CalculationInput>.Builder inputs = ImmutableArray.CreateBuilder<CalculationInput>();
    private readonly ImmutableArray<Result>.Builder results = ImmutableArray.CreateBuilder<Result>();

    /// <summary>What was written in a spec or in a file it uses.</summary>
    public ReportBuilder Given<T>(string symbol, string name, Written<T> written)
        where T : struct, IQuantity<T> => Add(GivenInput(symbol, name, written));

    /// <summary>What was written; else a default, with what that rests on.</summary>
    public ReportBuilder Given<T>(string symbol, string name, Written<T>? written, T otherwise, string basis)
        where T : struct, IQuantity<T> => written is { } w ? Given(symbol, name, w) : Assumed(symbol, name, otherwise, basis);

    /// <summary>What was written; else what is assumed.</summary>
    public ReportBuilder Given<T>(string symbol, string name, Written<T>? written, Assumption<T> otherwise)
        where T : struct, IQuantity<T> => Given(symbol, name, written, otherwise.Value, otherwise.ToString());

    public ReportBuilder Assumed<T>(string symbol, string name, Assumption<T> assumption)
        where T : struct, IQuantity<T> => Assumed(symbol, name, assumption.Value, assumption.ToString());

    public ReportBuilder Assumed<T>(string symbol, string name, T value, string basis)
        where T : struct, IQuantity<T> => Add(Constant(symbol, name, value, $"default: {basis}"));

    /// <summary>A value from a table, a rule or another chapter.</summary>
    public ReportBuilder Taken<T>(string symbol, string name, T value, string origin, int digits = Digits)
        where T : struct, IQuantity<T> => Add(Constant(symbol, name, value, origin, digits));

    /// <summary>A bare number.</summary>
    public ReportBuilder Number(string symbol, string name, double value, string origin) => Add(Bare(symbol, name, value, "", origin));

    public ReportBuilder Told(string name, string words, string origin) => Add(new CalculationInput("", name, words, null, null, origin));

    /// <summary>Several values that a formula sums.</summary>
    public ReportBuilder Each<T>(string symbol, string name, IEnumerable<(string Of, T Value)> terms, string origin)
        where T : struct, IQuantity<T>
    {
        ImmutableArray<Term> all = [.. terms.Select(t => new Term(t.Of, Quantity.Print(t.Value, Digits), t.Value.Value))];
        return Add(new CalculationInput(
            symbol,
            name,
            all.IsEmpty ? "none" : string.Join(" + ", all.Select(t => $"{t.Words} {t.Of}")).Replace("+ -", "− ", StringComparison.Ordinal),
            null,
            BaseUnit<T>(),
            origin,
            all));
    }

    public ReportBuilder Gives<T>(string symbol, string name, T value, string formula, int digits = Digits)
        where T : struct, IQuantity<T> => Add(new Result(symbol, name, Quantity.Print(value, digits), value.Value, BaseUnit<T>(), formula));

    /// <summary>A bare number in a unit that no quantity has.</summary>
    public ReportBuilder Gives(string symbol, string name, double value, string unit, string formula) =>
        Add(new Result(symbol, name, WithUnit(value, unit), value, unit, formula));

    /// <summary>What follows from the whole network, not from a formula of one line.</summary>
    public ReportBuilder Solved<T>(string symbol, string name, T? value, string by, int digits = Digits)
        where T : struct, IQuantity<T> =>
        Add(new Result(symbol, name, value is { } v ? Quantity.Print(v, digits) : "unknown", value?.Value, BaseUnit<T>(), null, by));

    /// <summary>A result in words.</summary>
    public ReportBuilder Says(string name, string words, string by) => Add(new Result("", name, words, null, null, null, by));

    public Calculation Of(string subject) => new(subject, inputs.ToImmutable(), results.ToImmutable());

    /// <summary>A value from a table, a rule or another chapter.</summary>
    internal static CalculationInput Constant<T>(string symbol, string name, T value, string origin, int digits = Digits)
        where T : struct, IQuantity<T> => new(symbol, name, Quantity.Print(value, digits), value.Value, BaseUnit<T>(), origin);

    internal static CalculationInput Bare(string symbol, string name, double value, string unit, string origin) =>
        new(symbol, name, WithUnit(value, unit), value, unit, origin);

    internal static CalculationInput GivenInput<T>(string symbol, string name, Written<T> written)
        where T : struct, IQuantity<T> => new(symbol, name, written.Words, written.Value.Value, BaseUnit<T>(), Place(written.At));

    /// <summary>File and line.</summary>
    internal static string Place(SourceSpan at) => string.Create(CultureInfo.InvariantCulture, $"{at.File.Name}:{at.Line}");

    private static string WithUnit(double value, string unit) =>
        unit.Length == 0 ? Quantity.Digits(value, FineDigits) : $"{Quantity.Digits(value, FineDigits)} {unit}";

    private static string BaseUnit<T>()
        where T : struct, IQuantity<T> => T.Units.FirstOrDefault(u => u.Factor == 1 && u.Offset == 0)?.Symbol ?? "share";

    private ReportBuilder Add(CalculationInput input)
    {
        inputs.Add(input);
        return this;
    }

    private ReportBuilder Add(Result result)
    {
        results.Add(result);
        return this;
    }
}
