using System.Globalization;
using WireSketch.Quantities;

namespace WireSketch.Installation;

/// <summary>Turns of phrase that messages share.</summary>
internal static class EnglishText
{
    /// <summary>"a", "a and b", "a, b and c".</summary>
    public static string And(IReadOnlyList<string> names) => Join(names, "and");

    /// <summary>"a", "a or b", "a, b or c".</summary>
    public static string Or(IReadOnlyList<string> names) => Join(names, "or");

    /// <summary>"1 coil", "2 coils".</summary>
    public static string Count(int number, string one, string? many = null) =>
        $"{number.ToString(CultureInfo.InvariantCulture)} {(number == 1 ? one : many ?? one + "s")}";

    /// <summary>A share in whole per cent.</summary>
    public static string Percent(double share) => $"{Quantity.Digits(share * 100, 2)} %";

    private static string Join(IReadOnlyList<string> names, string last) => names.Count switch
    {
        0 => "",
        1 => names[0],
        _ => $"{string.Join(", ", names.Take(names.Count - 1))} {last} {names[^1]}",
    };
}
