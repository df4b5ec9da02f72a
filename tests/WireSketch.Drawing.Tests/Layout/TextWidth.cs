namespace WireSketch.Drawing.Tests.Layout;

/// <summary>Rough widths of text, in units of 7-high letters: enough to give boxes and labels a likely size.</summary>
internal static class TextWidth
{
    public static int Of(string text)
    {
        int thousandths = 0;
        foreach (char c in text)
        {
            thousandths += c switch
            {
                ' ' or '.' or 'f' or 't' or 'i' or 'l' or 'j' or 'I' => 270,
                '·' or '-' or 'r' => 333,
                'c' or 'k' or 's' or 'v' or 'x' or 'y' or 'z' => 500,
                'm' or 'w' or 'W' or 'M' => 850,
                >= 'A' and <= 'Z' => 700,
                _ => 560,
            };
        }

        return ((thousandths * 7) + 999) / 1000;
    }
}
