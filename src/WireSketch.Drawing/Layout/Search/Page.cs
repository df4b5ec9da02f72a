namespace WireSketch.Drawing.Layout.Search;

/// <summary>The paper a sheet is to fill, and the text it is to be read in.</summary>
internal sealed class Page
{
    /// <summary>Devices up to which a page must stay readable in full.</summary>
    private const int FullDevices = 26;

    /// <summary>Height of a label's text, in hundredths of a unit.</summary>
    private const int TextHeight = 725;

    public Page(LayoutOptions options, int devices)
    {
        Width = Math.Max(1, options.PageWidth);
        Height = Math.Max(1, options.PageHeight);

        // Beyond, the floor falls with the root of the count: 6.05 pt × √(26 / devices), in hundredths of a point.
        IsFull = devices > FullDevices;
        Slope = devices <= FullDevices ? 2000 : 2000 * FullDevices / devices * FullDevices / devices;
        Floor = devices <= FullDevices ? 605 : (int)Root(605L * 605 * FullDevices / devices);
    }

    public int Width { get; }
    public int Height { get; }

    /// <summary>
    /// More devices than a page can hold readably: such a sheet is for a screen or a larger sheet, where straight wires count for more
    /// than paper.
    /// </summary>
    public bool IsFull { get; }

    /// <summary>Price of a hundredth of a point below the floor.</summary>
    public int Slope { get; }

    /// <summary>Least height of text wanted, in hundredths of a point.</summary>
    public int Floor { get; }

    /// <summary>Height of a label's text when a sheet is fitted to the page, in hundredths of a point.</summary>
    public int TextOf(int width, int height) =>
        (int)Math.Min((long)TextHeight * Width / Math.Max(1, width), (long)TextHeight * Height / Math.Max(1, height));

    /// <summary>The width that fills the page beside a given height.</summary>
    public int WidthFor(int height) => (int)((long)height * Width / Height);

    /// <summary>The height that fills the page beside a given width.</summary>
    public int HeightFor(int width) => (int)((long)width * Height / Width);

    private static long Root(long v)
    {
        long r = 0;
        for (long bit = 1L << 30; bit > 0; bit >>= 1)
        {
            r += (r + bit) * (r + bit) <= v ? bit : 0;
        }

        return r;
    }
}
