using WireSketch.Documents.Lists;
using WireSketch.Installation;

namespace WireSketch.Documents.Reports;

/// <summary>Lengths to cut.</summary>
internal static class CutChapter
{
    public static Chapter Of(InstalledSystem install)
    {
        var (settings, lengths) = (install.Spec.Settings, CutLength.Of(install.Spec));
        var shares = settings.SlackShare is { } share ? ReportBuilder.GivenInput("s", "slack, share", share)
            : ReportBuilder.Constant(
                "s",
                "slack, share",
                lengths.SlackShare,
                settings.SlackLength is null ? "default: 10 % (common practice)" : "none, since the slack is a length");
        var slack = settings.SlackLength is { } length
            ? ReportBuilder.GivenInput("s_L", "slack, length", length)
            : ReportBuilder.Constant("s_L", "slack, length", lengths.SlackLength, "none is written");
        var step = settings.RoundTo is { } round ? ReportBuilder.GivenInput("q", "rounded up to a multiple of", round)
            : ReportBuilder.Constant(
                "q",
                "rounded up to a multiple of",
                lengths.Step,
                lengths.IsMetric ? "default: 1 cm, since the file's first length is metric" : "default: 1 in");
        return new(
            "cuts", "Lengths to cut",
            ["A piece is cut with slack, rounded up. A difference below one millionth of the step is arithmetic and does not count."],
            [shares, slack, step],
            [
                .. SameWorking.Merged(install.Wiring.Conductors.Where(c =>
                    c.Length.Value > 0 && install.Wiring.RunsById[c.RunId].Length is not null)
                    .Select(c => new ReportBuilder()
                        .Taken("L", "length", c.Length, "chapter Resistance of the conductors")
                        .Gives("L_cut", "to cut", lengths.For(c.Length), "q·ceil((L·(1 + s) + s_L)/q − 0.000001)")
                        .Says("in words", lengths.Both(lengths.For(c.Length)), "cuts.md").Of(c.Id))),
            ]);
    }
}
