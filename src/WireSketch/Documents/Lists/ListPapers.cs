using WireSketch.Documents.Formats;

namespace WireSketch.Documents.Lists;

/// <summary>The parts list and the cut list for people.</summary>
internal static class ListPapers
{
    public static Paper Parts(PaperHead head, PartsList parts)
    {
        var paper = head.Begin("Parts");
        paper.Paragraph(Cautions.InShort)
            .Paragraph(
                "What is in the vehicle already is left out. Terminals, studs, shrink tube and ties are common practice, no published "
                    + "source: compare them with the devices before buying.");
        foreach (var group in Enum.GetValues<PartGroup>())
        {
            var table = parts.ForReading(group);
            if (!table.Rows.IsEmpty)
            {
                var words = PartsList.Section(group);
                paper.Heading(2, char.ToUpperInvariant(words[0]) + words[1..]).Table(table);
            }
        }

        if (parts.KnownCost > 0)
        {
            var sum = $"{parts.KnownCost.ToString("F2", System.Globalization.CultureInfo.InvariantCulture)} "
                + $"{parts.Currency ?? "(no currency given)"}";
            paper.Paragraph(parts.LacksPrices
                ? $"The lines with a price come to {sum}. Lines without one are not in it."
                : $"All lines come to {sum}.");
        }

        if (parts.KnownHours > 0)
        {
            paper.Paragraph($"The labor that is stated comes to {PlainTable.Number(parts.KnownHours, 2)} h.");
        }

        return paper.ToPaper("parts.md");
    }

    public static Paper Cuts(PaperHead head, CutList cuts)
    {
        var lengths = cuts.Lengths;
        var slack = string.Join(" and ", new[]
        {
            lengths.SlackShare.Value > 0 ? $"{lengths.SlackShare} of the length" : null,
            lengths.SlackLength.Value > 0 ? lengths.One(lengths.SlackLength) : null,
        }.OfType<string>());
        var paper = head.Begin("Cut list").Paragraph(Cautions.InShort)
            .Paragraph(
                $"Each piece is cut with {(slack.Length > 0 ? $"{slack} of slack" : "no slack")}, rounded up to "
                    + $"{lengths.One(lengths.Step)}. A piece's id goes onto both its ends. Measure the way in the vehicle before cutting.")
            .Table(cuts.ForReading());
        if (cuts.Pieces.IsEmpty && !cuts.InVehicle.IsEmpty)
        {
            paper.Paragraph("Nothing is cut: all wire is in the vehicle already.");
        }
        else
        {
            paper.Heading(2, "Wire in all").Table(cuts.TotalsForReading());
        }

        if (!cuts.InVehicle.IsEmpty)
        {
            paper.Heading(2, "In the vehicle already, not cut").Table(cuts.InVehicleForReading());
        }

        return paper.ToPaper("cuts.md");
    }
}
