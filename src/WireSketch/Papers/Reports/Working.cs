using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Papers.Reports;

/// <summary>The working for one subject as it is written down: what went in, each with its origin, then what came out, each with its formula.</summary>
internal sealed class Working
{
    /// <summary>Digits that are printed: enough that what is printed multiplies out.</summary>
    public const int Digits = 5;

    /// <summary>Digits of volts that are taken from each other.</summary>
    public const int FineDigits = 6;

    private readonly ImmutableArray<Input>.Builder inputs = ImmutableArray.CreateBuilder<Input>();
    private readonly ImmutableArray<Result>.Builder results = ImmutableArray.CreateBuilder<Result>();

    /// <summary>What was written in a spec or in a file it uses.</summary>
    public Working Given<T>(string symbol, string name, Written<T> written)
        where T : struct, IQuantity<T> => Add(GivenInput(symbol, name, written));

    /// <summary>What was written; else a default, with what that rests on.</summary>
    public Working Given<T>(string symbol, string name, Written<T>? written, T otherwise, string basis)
        where T : struct, IQuantity<T> => written is { } w ? Given(symbol, name, w) : Assumed(symbol, name, otherwise, basis);

    public Working Assumed<T>(string symbol, string name, T value, string basis)
        where T : struct, IQuantity<T> => Add(Constant(symbol, name, value, $"default: {basis}"));

    /// <summary>A value from a table, a rule or another chapter.</summary>
    public Working Taken<T>(string symbol, string name, T value, string origin, int digits = Digits)
        where T : struct, IQuantity<T> => Add(Constant(symbol, name, value, origin, digits));

    /// <summary>A bare number.</summary>
    public Working Number(string symbol, string name, double value, string origin) => Add(Bare(symbol, name, value, "", origin));

    public Working Told(string name, string words, string origin) => Add(new Input("", name, words, null, null, origin));

    /// <summary>Several values that a formula sums.</summary>
    public Working Each<T>(string symbol, string name, IEnumerable<(string Of, T Value)> terms, string origin)
        where T : struct, IQuantity<T>
    {
        ImmutableArray<Term> all = [.. terms.Select(t => new Term(t.Of, Quantity.Print(t.Value, Digits), t.Value.Value))];
        return Add(new Input(symbol, name, all.IsEmpty ? "none" : string.Join(" + ", all.Select(t => $"{t.Words} {t.Of}")).Replace("+ -", "− ", StringComparison.Ordinal), null, BaseUnit<T>(), origin, all));
    }

    public Working Gives<T>(string symbol, string name, T value, string formula, int digits = Digits)
        where T : struct, IQuantity<T> => Add(new Result(symbol, name, Quantity.Print(value, digits), value.Value, BaseUnit<T>(), formula));

    /// <summary>A bare number in a unit that no quantity has.</summary>
    public Working Gives(string symbol, string name, double value, string unit, string formula) =>
        Add(new Result(symbol, name, WithUnit(value, unit), value, unit, formula));

    /// <summary>What follows from the whole network, not from a formula of one line.</summary>
    public Working Solved<T>(string symbol, string name, T? value, string by, int digits = Digits)
        where T : struct, IQuantity<T> => Add(new Result(symbol, name, value is { } v ? Quantity.Print(v, digits) : "unknown", value?.Value, BaseUnit<T>(), null, by));

    /// <summary>A result in words.</summary>
    public Working Says(string name, string words, string by) => Add(new Result("", name, words, null, null, null, by));

    public Calculation Of(string subject) => new(subject, inputs.ToImmutable(), results.ToImmutable());

    /// <summary>A value from a table, a rule or another chapter.</summary>
    internal static Input Constant<T>(string symbol, string name, T value, string origin, int digits = Digits)
        where T : struct, IQuantity<T> => new(symbol, name, Quantity.Print(value, digits), value.Value, BaseUnit<T>(), origin);

    internal static Input Bare(string symbol, string name, double value, string unit, string origin) => new(symbol, name, WithUnit(value, unit), value, unit, origin);

    internal static Input GivenInput<T>(string symbol, string name, Written<T> written)
        where T : struct, IQuantity<T> => new(symbol, name, written.Words, written.Value.Value, BaseUnit<T>(), Place(written.At));

    /// <summary>File and line.</summary>
    internal static string Place(Span at) => string.Create(CultureInfo.InvariantCulture, $"{at.File.Name}:{at.Line}");

    private static string WithUnit(double value, string unit) => unit.Length == 0 ? Quantity.Digits(value, FineDigits) : $"{Quantity.Digits(value, FineDigits)} {unit}";

    private static string BaseUnit<T>()
        where T : struct, IQuantity<T> => T.Units.FirstOrDefault(u => u.Factor == 1 && u.Offset == 0)?.Symbol ?? "share";

    private Working Add(Input input)
    {
        inputs.Add(input);
        return this;
    }

    private Working Add(Result result)
    {
        results.Add(result);
        return this;
    }
}
