using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Papers.Formats;
using WireSketch.Papers.Lists;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Papers.HandOver;

/// <summary>What the owner of the vehicle gets: what was fitted, where the fuses are, how to live with it.</summary>
internal static class HandOverPaper
{
    public static Paper Write(PaperHead head, ImmutableArray<Finding> findings)
    {
        var install = head.Install;
        var accepted = findings.Where(f => f.AcceptedBecause is not null).ToArray();
        var paper = head.Begin("Your system")
            .Paragraph("Keep these pages with the vehicle. Whoever works on it next needs them, and the drawing with them.")
            .Heading(2, "For your safety").List(Cautions.ForOwners)
            .Heading(2, "What was fitted").Table(Fitted(install))
            .Heading(2, "Where the fuses are").Paragraph("Each protects the wire behind it. The spare ones we left with you are of the same style and rating.").Table(Fuses(install))
            .Heading(2, "Living with it").List(Living(install));
        if (accepted.Length > 0)
        {
            paper.Heading(2, "What we agreed on").Paragraph("These points were found, looked at, and left as they are for the reason given.")
                .List(accepted.Select(f => $"{f.Message} Reason: {f.AcceptedBecause}"));
        }

        return paper.Heading(2, "Handed over").Table(new(
            [new("What"), new("Done"), new("Initials")],
            [
                .. new[] { "Everything was shown and tried together", "Settings were written down", "Spare fuses were left with the vehicle", "The owner has the drawing and these pages" }
                    .Select(w => ImmutableArray.Create(w, "", "")),
            ])).Paragraph("Date and signatures:").ToPaper("handover.md");
    }

    private static PlainTable Fitted(Install install) => new(
        [new("What"), new("Where")],
        [
            .. install.Spec.Gear.Where(g => !g.InVehicle && !GearWords.IsPlaceOnVehicle(g))
                .Select(g => ImmutableArray.Create($"{g.Id}: {GearWords.Item(g)}", g.Facts.Place?.Value is { } place ? g.Zone is { } z ? $"{z}, {place}" : place : g.Zone ?? "")),
        ]);

    private static PlainTable Fuses(Install install) => new(
        [new("Fuse"), new("Rating"), new("Style"), new("Where"), new("Feeds")],
        [.. install.Wiring.Links.Where(l => l.Protects && l.Gear is not { InVehicle: true }).Select(l => FuseRow(install, l))]);

    private static ImmutableArray<string> FuseRow(Install install, Link link)
    {
        var run = install.Wiring.Runs.FirstOrDefault(r => r.Holder is { } h && ReferenceEquals(h, link.Gear));
        var where = run is not null
            ? $"{(run.Run.Protection?.Distance is { } at ? $"{at} from {run.From[0].Id}" : run.From[0].Id)}{(run.From[0].Gear.Zone is { } z ? $" ({z})" : "")}"
            : string.Join(", ", new[] { link.Gear?.Facts.Place?.Value, link.Gear?.Zone }.OfType<string>());
        return
        [
            link.Id, link.Rating is { } rating ? Quantity.Print(rating) : "", link.Kind == LinkKind.Breaker ? "breaker" : FuseStyle.Of(install, link), where,
            string.Join(", ", Fed(install, link)),
        ];
    }

    /// <summary>Devices whose supply comes through a fuse.</summary>
    private static IEnumerable<string> Fed(Install install, Link link) =>
        install.Wiring.Loads.Where(l => l.Supply.Any(s => s.Link?.Index == link.Index)).Select(l => l.Gear.Id);

    private static IEnumerable<string> Living(Install install)
    {
        var energy = install.Answers.Energy;
        if (install.Spec.Gear.Any(g => g is Amplifier))
        {
            yield return "Turn it up slowly, and stop where it begins to sound strained: that is where speakers are harmed.";
        }

        if (energy.Reserve is { } reserve)
        {
            yield return $"With the engine off, music plays about {Hours(reserve)} before the battery may be too flat to start. Less when it is cold or the battery is old.";
        }

        if (energy.StandbyTime is { } standby)
        {
            yield return $"Left alone, the vehicle should still start after about {Days(standby)}. If it stands longer, use a charger.";
        }

        if (energy.AlternatorAtSpeed is { } gives && energy.AverageDemand + energy.BaseLoad > gives)
        {
            yield return "Played loud for long, the system takes more than the alternator gives: let it rest, or the battery empties while you drive.";
        }

        yield return "Headlights that dim with the music, a fuse that opens, a device that gets too hot to touch: come back to us.";
    }

    private static string Hours(Seconds time)
    {
        var minutes = time.Value / 60;
        return minutes < 90 ? $"{PlainTable.Number(Math.Floor(minutes / 5) * 5)} minutes" : $"{PlainTable.Number(Math.Floor(minutes / 30) / 2)} hours";
    }

    private static string Days(Seconds time)
    {
        var days = Math.Floor(time.Value / 86400);
        return days < 1 ? "less than a day" : days > 90 ? "three months" : days == 1 ? "1 day" : $"{PlainTable.Number(days)} days";
    }
}
