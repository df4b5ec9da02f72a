using System.Globalization;

namespace WireSketch.Quantities;

/// <summary>
/// The size of a conductor: an AWG number or a cross-section in mm². American sizes follow the formula of ASTM B258,
/// d = 0.127 mm × 92^((36 − n) / 39), with n = 0, −1, −2, −3 for 1/0, 2/0, 3/0, 4/0.
/// </summary>
public readonly record struct WireSize : IComparable<WireSize>
{
    private WireSize(int? awg, double area)
    {
        Awg = awg;
        Area = new SquareMillimeters(area);
    }

    /// <summary>The American number (0 and below for 1/0 and thicker); null for a metric size.</summary>
    public int? Awg { get; }

    public SquareMillimeters Area { get; }

    public static WireSize FromAwg(int number)
    {
        var diameter = 0.127 * Exact.Pow(92, (36 - number) / 39.0);
        return new(number, Math.PI / 4 * diameter * diameter);
    }

    public static WireSize FromArea(SquareMillimeters area) => new(null, area.Value);

    /// <summary>Reads <c>4 AWG</c>, <c>1/0 AWG</c> or <c>21 mm2</c>.</summary>
    public static bool TryRead(string words, out WireSize size, out string trouble)
    {
        size = default;
        var text = words.Trim();
        if (text.EndsWith("AWG", StringComparison.OrdinalIgnoreCase))
        {
            var number = text[..^3].Trim();
            var zeros = number.EndsWith("/0", StringComparison.Ordinal);
            if (int.TryParse(zeros ? number[..^2] : number, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                && (zeros ? n is >= 1 and <= 4 : n is >= 0 and <= 40))
            {
                size = FromAwg(zeros ? 1 - n : n);
                trouble = "";
                return true;
            }

            trouble = $"\"{words}\" is no AWG size: write 4 AWG, 1/0 AWG and so on, from 4/0 to 40";
            return false;
        }

        if (text.Split(' ') is [var bare, "gauge" or "ga" or "ga."] && TryRead(bare + " AWG", out _, out _))
        {
            trouble = $"\"{words}\" does not say by which gauge: write {bare} AWG if that is meant";
            return false;
        }

        if (Quantity.TryRead<SquareMillimeters>(text, out var area, out trouble))
        {
            if (area.Value is > 0 and <= 1000)
            {
                size = FromArea(area);
                return true;
            }

            trouble = $"\"{words}\" is no size of cable: it must lie between 0 and 1000 mm2";
            return false;
        }

        trouble = $"\"{words}\" is not a size of wire: write it in AWG or mm2, such as 4 AWG or 21 mm2";
        return false;
    }

    public static bool operator <(WireSize a, WireSize b) => a.CompareTo(b) < 0;

    public static bool operator >(WireSize a, WireSize b) => a.CompareTo(b) > 0;

    public static bool operator <=(WireSize a, WireSize b) => a.CompareTo(b) <= 0;

    public static bool operator >=(WireSize a, WireSize b) => a.CompareTo(b) >= 0;

    /// <summary>Thinner comes first.</summary>
    public int CompareTo(WireSize other) => Area.CompareTo(other.Area);

    public override string ToString() => Awg switch
    {
        null => Quantity.Print(Area),
        <= 0 and var n => string.Create(CultureInfo.InvariantCulture, $"{1 - n}/0 AWG"),
        var n => string.Create(CultureInfo.InvariantCulture, $"{n} AWG"),
    };
}
