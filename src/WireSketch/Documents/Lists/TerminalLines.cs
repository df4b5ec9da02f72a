using System.Globalization;
using WireSketch.Tables;

namespace WireSketch.Documents.Lists;

/// <summary>What the ends of all wires are finished with, and what goes over and onto them.</summary>
internal static class TerminalLines
{
    public static IEnumerable<PartLine> Of(CutList cuts)
    {
        var ends = cuts.Pieces.SelectMany(p => p.Conductors.SelectMany(c => new[] { (Conductor: c, At: c.From), (Conductor: c, At: c.To) }))
            .Where(e => !(e.Conductor.IsJumper && e.Conductor.Length.Value == 0))
            .Concat(cuts.EndsAtNewHolders)
            .Select(e => (e.Conductor, e.At, End: WireEnd.Of(e.Conductor, e.At))).Where(e => e.End.Item is not null).ToArray();
        foreach (var g in ends.GroupBy(e => (e.End.Item, e.End.Remark)))
        {
            yield return new(
                PartGroup.Terminals,
                g.Key.Item!,
                g.Count(),
                PartLine.Pieces,
                null,
                [.. g.Select(e => $"{e.Conductor.Id} at {e.At.Id}")],
                g.Key.Remark);
        }

        foreach (var g in ends.Where(e => e.End.IsCrimped).GroupBy(e => e.Conductor.Wire.SizeWords))
        {
            yield return new(
                PartGroup.Consumables,
                $"shrink tube with adhesive, for {g.Key}",
                Math.Round(g.Count() * Assume.ShrinkPerEnd.Value.Value, 2),
                "m",
                null,
                [string.Create(CultureInfo.InvariantCulture, $"{g.Count()} {(g.Count() == 1 ? "end" : "ends")}")],
                $"{Assume.ShrinkPerEnd.Words} an end ({Assume.ShrinkPerEnd.Basis})");
        }

        var pieces = cuts.Pieces.Where(p => !p.IsMadeUp).ToArray();
        var labels = pieces.Sum(p => 2 * p.Pieces);
        if (labels > 0)
        {
            yield return new(
                PartGroup.Consumables, "label that wraps around the wire", labels, PartLine.Pieces, null, ["both ends of every piece"],
                "printed with the piece's id");
            var ties = (int)Math.Ceiling(pieces.Sum(p => p.Length.Value * p.Pieces) / Assume.BetweenTies.Value.Value);
            yield return new(
                PartGroup.Consumables,
                "cable tie or clip",
                ties,
                PartLine.Pieces,
                null,
                ["all runs"],
                $"one every {Assume.BetweenTies.Words} ({Assume.BetweenTies.Basis})");
        }
    }
}
