namespace WireSketch.Quantities;

/// <summary>A number written with a comma: whether it parts the decimals or the thousands, only its writer knows.</summary>
internal static class DecimalComma
{
    /// <summary>What was probably meant, and what to type.</summary>
    /// <param name="whole">What stands before the comma, digits only.</param>
    /// <param name="rest">What stands behind it: digits, then perhaps a unit.</param>
    public static (string Better, string Help) Mend(string whole, string rest)
    {
        var digits = rest.TakeWhile(char.IsAsciiDigit).Count();
        return digits == 3
            ? ($"{whole}{rest}", $"write {whole}{rest}, or {whole}.{rest} if the comma parts the decimals")
            : ($"{whole}.{rest}", $"write {whole}.{rest}");
    }

    /// <summary>
    /// The digits before a comma that is followed by a digit, and what stands behind it; null if a text does not begin so.
    /// </summary>
    public static (string Whole, string Behind)? In(string text)
    {
        var digits = text.TakeWhile(char.IsAsciiDigit).Count();
        return digits > 0 && digits + 1 < text.Length && text[digits] == ',' && char.IsAsciiDigit(text[digits + 1])
            ? (text[..digits], text[(digits + 1)..])
            : null;
    }
}
