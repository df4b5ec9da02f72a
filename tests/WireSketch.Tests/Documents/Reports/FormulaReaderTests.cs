namespace WireSketch.Tests.Documents.Reports;

/// <summary>The reader that checks the report is checked itself, against sums done by hand.</summary>
public sealed class FormulaReaderTests
{
    [Theory]
    [InlineData("2 + 3·4", 14)]
    [InlineData("(2 + 3)·4 − 6/3", 18)]
    [InlineData("7 − 2 − 1", 4)]
    [InlineData("2·3²", 18)]
    [InlineData("2^(1 + 2)", 8)]
    [InlineData("√(9 + 16)", 5)]
    [InlineData("min(3, 1 + 1) + max(1, 5)", 7)]
    [InlineData("ceil(2.1)·sum(x)", 30)]
    [InlineData("20·log10(y) − ln(1)", 40)]
    [InlineData("(−2)·y", -200)]
    public void Sums_come_out_as_by_hand(string formula, double value) =>
        Assert.Equal(
            value,
            FormulaReader.Evaluate(formula, new Dictionary<string, IReadOnlyList<double>> { ["x"] = [1, 2, 7], ["y"] = [100] }),
            1e-12);

    [Theory]
    [InlineData("2 + z")]
    [InlineData("(2 + 3")]
    [InlineData("2 3")]
    public void What_is_no_formula_is_refused(string formula) =>
        Assert.ThrowsAny<Exception>(() => FormulaReader.Evaluate(formula, new Dictionary<string, IReadOnlyList<double>>()));
}
