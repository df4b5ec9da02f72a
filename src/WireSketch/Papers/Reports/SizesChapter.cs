using WireSketch.Rules;

namespace WireSketch.Papers.Reports;

/// <summary>What was chosen where the spec says <c>auto</c>.</summary>
internal static class SizesChapter
{
    public static Chapter Of(Install install)
    {
        var sizes = install.Sizes;
        return new(
            "sizes", "Sizes that were chosen",
            ["Where the spec says auto: the smallest sizes and ratings that break no rule, over the whole network at once."],
            [
                .. install.Wiring.Runs.Where(r => sizes.Wires.ContainsKey(r.Id) || sizes.Fuses.ContainsKey(r.Id)).Select(r => new Calculation(
                    r.Id, [new("decided by", sizes.Reasons.GetValueOrDefault(r.Id, "the smallest size there is"), null, null, "rules")],
                    [
                        .. sizes.Wires.TryGetValue(r.Id, out var wire) ? new[] { new Result("wire", wire.ToString(), wire.Area.Value, "mm2") } : [],
                        .. sizes.Fuses.TryGetValue(r.Id, out var fuse) ? new[] { Result.Of("fuse", fuse) } : [],
                    ])),
            ]);
    }
}
