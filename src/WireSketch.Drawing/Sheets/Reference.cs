namespace WireSketch.Drawing.Sheets;

/// <summary>Where a wire goes on, on another sheet.</summary>
/// <param name="Letter">Its letter, the same on both sheets.</param>
/// <param name="Sheet">Number of the other sheet.</param>
/// <param name="Square">Square of the other sheet's grid.</param>
internal sealed record Reference(string Letter, int Sheet, string Square)
{
    /// <summary>Room for the widest that is written.</summary>
    public const int Width = 64;

    /// <summary>The letter of the n-th reference, from 0: A to Z, then AA.</summary>
    public static string LetterOf(int n) => n < 26 ? ((char)('A' + n)).ToString() : LetterOf((n / 26) - 1) + (char)('A' + (n % 26));
}
