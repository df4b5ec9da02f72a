using System.Numerics;
using WireSketch.Electrical.Responses;

namespace WireSketch.Tests.Electrical.Responses;

public sealed class ResponseTests
{
    private static readonly double[] Labels = [
        20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000,
        6300, 8000, 10000, 12500, 16000, 20000
    ];

    /// <summary>IEC 61260-1, base ten: the middle of band x is 1000 G^(x/3) with G = 10^0.3.</summary>
    [Fact]
    public void A_label_stands_for_the_exact_middle_of_its_band()
    {
        for (var i = 0; i < Labels.Length; i++)
        {
            var exact = 1000 * Math.Pow(Math.Pow(10, 0.3), (i - 17) / 3.0);
            Assert.Equal(exact, ResponseCurve.MiddleOf(new(Labels[i])).Value, exact * 1e-9);
            Assert.Equal(Labels[i], ResponseCurve.Label(ResponseCurve.MiddleOf(new(Labels[i]))).Value, 9);
        }

        Assert.Equal(70, ResponseCurve.MiddleOf(new(70)).Value);
    }

    /// <summary>
    /// Lessons in Electric Circuits vol. II ch. 8; one octave outside a first order is -10 lg 5, a second order -10 lg 17.
    /// </summary>
    [Theory]
    [InlineData(1, 1, -3.01029995664)]
    [InlineData(2, 1, -6.98970004336)]
    [InlineData(1, 2, -3.01029995664)]
    [InlineData(2, 2, -12.3044892138)]
    public void A_filter_has_the_textbook_level(double ratio, int order, double level) =>
        Assert.Equal(level, FilterFit.LevelOf(ratio, order).Value, 9);

    /// <summary>Curves made from the poles of Butterworth filters, s = exp(jπ(2k + n - 1) / 2n), by multiplying complex factors.</summary>
    [Theory]
    [InlineData(1, 95)]
    [InlineData(2, 80)]
    [InlineData(3, 120)]
    [InlineData(4, 100)]
    public void A_filter_is_found_again_from_its_levels(int order, double corner)
    {
        var curve =
            ResponseCurve.Of(Labels.Select(f =>
                new BandLevel(new(f), new(17 + ByPoles(corner / ResponseCurve.MiddleOf(new(f)).Value, order)))))!;
        var fit = FilterFit.HighPass(curve)!;
        Assert.Equal(order, fit.Order);
        Assert.Equal(6 * order, fit.PerOctave.Value);
        Assert.InRange(fit.Corner.Value / corner, 0.99, 1.01);
        Assert.True(fit.Error.Value < 0.1, $"{fit.Error}");
        Assert.Equal(curve.LowCorner(new(3))!.Value.Value, corner, corner * 0.06);
    }

    [Theory]
    [InlineData(2, 4000)]
    [InlineData(4, 3000)]
    public void The_upper_end_is_found_alike(int order, double corner)
    {
        var curve =
            ResponseCurve.Of(Labels.Select(f =>
                new BandLevel(new(f), new(ByPoles(ResponseCurve.MiddleOf(new(f)).Value / corner, order)))))!;
        var fit = FilterFit.LowPass(curve)!;
        Assert.Equal(order, fit.Order);
        Assert.InRange(fit.Corner.Value / corner, 0.97, 1.03);
    }

    [Fact]
    public void A_flat_response_looks_like_no_filter()
    {
        var curve = ResponseCurve.Of(Labels.Select(f => new BandLevel(new(f), new(-12))))!;
        Assert.Null(FilterFit.HighPass(curve));
        Assert.Null(FilterFit.LowPass(curve));
        Assert.Null(curve.LowCorner(new(3)));
        Assert.All(curve.Levels, l => Assert.Equal(0, l.Level.Value, 9));
    }

    /// <summary>The middle ends at 2 kHz: what is cut above it does not move the zero.</summary>
    [Fact]
    public void The_middle_is_200_Hz_to_2_kHz()
    {
        var curve = ResponseCurve.Of(Labels.Select(f => new BandLevel(new(f), new(f < 200 ? -30 : f > 2000 ? -20 : -6))))!;
        Assert.All(curve.Levels, l => Assert.Equal(l.At.Value < 190 ? -24 : l.At.Value > 2100 ? -14 : 0, l.Level.Value, 9));
    }

    [Fact]
    public void A_response_without_a_middle_tells_nothing() => Assert.Null(ResponseCurve.Of([new(new(40), new(0)), new(new(63), new(0))]));

    private static double ByPoles(double ratio, int order)
    {
        var s = new Complex(0, ratio);
        var product = Complex.One;
        for (var k = 1; k <= order; k++)
        {
            product *= s - Complex.Exp(new Complex(0, Math.PI * ((2 * k) + order - 1) / (2 * order)));
        }

        return -20 * Math.Log10(product.Magnitude);
    }
}
