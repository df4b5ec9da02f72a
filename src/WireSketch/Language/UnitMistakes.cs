using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Syntax;

namespace WireSketch.Language;

/// <summary>What is said of a quantity that cannot be read.</summary>
internal static class UnitMistakes
{
    /// <summary>Says which units fit; one that differs only in its capitals is put right, and a comma in the number.</summary>
    public static Finding Finding<T>(ScalarNode s, string words, string trouble)
        where T : struct, IQuantity<T>
    {
        var number = Quantity.NumberLength(words);
        var unit = words[number..].Trim();
        var alike = T.Units.Where(u => string.Equals(u.Symbol, unit, StringComparison.OrdinalIgnoreCase)).ToArray();
        if (number > 0 && alike.Length == 1)
        {
            var better = $"{words[..number]} {alike[0].Symbol}";
            return new("spec/unit", Severity.Error, trouble, s.At)
            {
                Help = $"write {better}",
                Fixes = s.At.Words == words ? [new($"write {better}", [new(s.At, better)])] : [],
            };
        }

        if (DecimalComma.In(words) is var (whole, rest))
        {
            return new("spec/value", Severity.Error, trouble, s.At) { Help = DecimalComma.Mend(whole, rest).Help };
        }

        if (AmountCures.Of<T>(words) is { } meant)
        {
            return new("spec/unit", Severity.Error, trouble, s.At)
            {
                Help = $"write {meant}, if that is what is meant",
                Fixes = s.At.Words == words ? [new($"write {meant}", [new(s.At, meant)])] : [],
            };
        }

        return new(
            number > 0 ? "spec/unit" : "spec/value", Severity.Error, trouble, s.At)
        {
            Help = number > 0 && unit.Length == 0 ? null : $"write a number with its unit, such as {Limits.Example<T>()}"
        };
    }
}
