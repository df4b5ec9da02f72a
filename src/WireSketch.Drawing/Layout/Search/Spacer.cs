using WireSketch.Drawing.Layout.P3Place;
using WireSketch.Drawing.Layout.P4Route;
using WireSketch.Drawing.Layout.P5Label;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Sets rows and devices of a sheet further apart where the page has height to spare, as a draughtsman fills a sheet.</summary>
internal static class Spacer
{
    private const int MostSpread = 40, FullFrom = 85, FullTo = 94;

    /// <summary>The same arrangement with the most space that the page allows; it gains no crossing and no bend, and no width.</summary>
    public static LabeledSheet Fill(LabeledSheet sheet, Page page)
    {
        int free = page.HeightFor(sheet.Width);
        if (sheet.Height * 100 > free * FullFrom)
        {
            return sheet;
        }

        long bends = Pricing.Bends(sheet);
        int around = sheet.Height - sheet.Placed.Height, room = (free * FullTo / 100) - around;
        for (int spread = MostSpread; spread > 0; spread -= Model.Measure.Grid)
        {
            var routed = Router.Route(Placer.Place(sheet.Placed.Order, room, spread));
            if (routed.Placed.Height <= room && routed.Clashes.Count == 0 && routed.Crossings <= sheet.Routed.Crossings
                && Labeler.Label(routed, 0) is var spaced && spaced.Width <= sheet.Width && Pricing.Bends(spaced) <= bends)
            {
                return spaced;
            }
        }

        return sheet;
    }
}
