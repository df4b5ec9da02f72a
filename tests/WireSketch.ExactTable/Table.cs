using System.Globalization;
using System.Text;
using WireSketch.Quantities;

namespace WireSketch.ExactTable;

/// <summary>
/// Powers, logarithms, roots and circular functions at some hundreds of arguments each, in digits that read back as the same double.
/// </summary>
internal static class Table
{
    private const int Count = 240;

    /// <summary>Arguments without a rounding of their own: multiples of 1/64.</summary>
    private static IEnumerable<double> Arguments(double from, double step) => Enumerable.Range(0, Count).Select(i => from + (i * step));

    public static string Print()
    {
        var text = new StringBuilder();
        Of("exp", -20, 11.0 / 64, Exact.Exp);
        Of("log", 1.0 / 64, 45.0 / 64, Exact.Log);
        Of("log2", 20, 5347.0 / 64, Exact.Log2);
        Of("log10", 1.0 / 64, 1001.0 / 64, Exact.Log10);
        Of("cbrt", -7, 37.0 / 64, Exact.Cbrt);
        Of("sin", -6.5, 3.5 / 64, Exact.Sin);
        Of("cos", -6.5, 3.5 / 64, Exact.Cos);
        Of("tan", -6.5, 3.5 / 64, Exact.Tan);
        Of("atan2 of 3 and", -40, 21.0 / 64, x => Exact.Atan2(3, x));
        Of("10 to", -6, 3.25 / 64, x => Exact.Pow(10, x));
        Of("2 to", 4, 3.0 / 64, x => Exact.Pow(2, x));

        // As wire sizes, levels and filters use it: an exponent that is itself rounded, and a high power.
        Of("92 to 1/39 of", -5, 0.25, x => Exact.Pow(92, x / 39));
        Of("2.4th power of", 0.0625, 1.0 / 256, x => Exact.Pow(x, 2.4));
        Of("16th power of", 1.0 / 64, 3.0 / 64, x => Exact.Pow(x, 16));
        return text.ToString();

        void Of(string name, double from, double step, Func<double, double> function)
        {
            foreach (var x in Arguments(from, step))
            {
                text.Append(CultureInfo.InvariantCulture, $"{name} {x:R} = {function(x):R}\n");
            }
        }
    }
}
