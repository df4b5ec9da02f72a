using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Documents.Formats;
using WireSketch.Documents.Lists;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Documents.HandOver;

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
            .Heading(2, "Where the fuses are")
            .Paragraph(
                "Each protects the wire behind it. The spare ones we left with you are of the same style and rating. A breaker that has "
                    + "opened is reset once the cause is found.")
            .Table(FuseMap.Of(install))
            .Heading(2, "To take everything off the supply").Steps(MakingSafe.Steps(install))
            .Heading(2, "Living with it").List(Living(install));
        var taps = NextTechnician.Taps(install);
        var notes = NextTechnician.Notes(install).ToArray();
        var wires = NextTechnician.Wires(install);
        if (taps.Rows.Length > 0 || notes.Length > 0 || wires.Rows.Length > 0)
        {
            paper.Heading(2, "For the next technician").Table(taps).Table(wires);
            if (notes.Length > 0)
            {
                paper.List(notes);
            }
        }

        if (accepted.Length > 0)
        {
            paper.Heading(2, "What we agreed on")
                .Paragraph("These points were found, looked at, and left as they are for the reason given.")
                .List(accepted.Select(f => $"{f.Message} Reason: {f.AcceptedBecause}"));
        }

        return paper.Heading(2, "Handed over").Table(new(
            [new("What"), new("Done"), new("Initials")],
            [
                .. new[]
                {
                    "Everything was shown and tried together",
                    "Settings and readings were written down (setup.md)",
                    "Spare fuses were left with the vehicle",
                    "The owner has the drawing and these pages"
                }
                    .Select(w => ImmutableArray.Create(w, "", "")),
            ])).Paragraph("Date and signatures:").ToPaper("handover.md");
    }

    private static PlainTable Fitted(InstalledSystem install) => new(
        [new("What"), new("Where")],
        [
            .. install.Spec.Gear.Where(g => !g.InVehicle && !DeviceNames.IsPlaceOnVehicle(g))
                .Select(g =>
                    ImmutableArray.Create(
                        $"{DisplayNames.WithId(g)}: {DeviceNames.Item(g)}",
                        Whereabouts.Of(g))),
        ]);

    private static IEnumerable<string> Living(InstalledSystem install)
    {
        var energy = install.Answers.Energy;
        var sounds = install.Spec.Gear.Any(g => g.Cautions.Contains(GearCaution.LoudSound));
        if (sounds)
        {
            yield return "Turn it up slowly, and stop where it begins to sound strained: that is where speakers are harmed.";
        }

        var starter = install.Wiring.Starter;
        if (energy.EngineOff is { } off)
        {
            var what = sounds ? "music plays" : "what was fitted runs";
            yield return $"With the engine off, {what} about {Hours(off.Lasts)} before "
                + $"{(off.Includes(starter) ? "the battery may be too flat to "
                    + "start" : $"{EnglishText.And([.. off.Batteries.Select(b => b.Id)])} should be charged again; the battery that "
                        + "starts the engine is not drawn on")}. Less when it is cold or the battery is old.";
        }

        if (energy.Standing is { } standing)
        {
            yield return $"Left alone, "
                + $"{(standing.Includes(starter) ? $"the vehicle should still start after about "
                    + $"{Days(standing.Lasts)}" : $"{EnglishText.And([.. standing.Batteries.Select(b => b.Id)])} lasts about "
                        + $"{Days(standing.Lasts)}; the battery that starts the engine is not drawn on")}. If it stands longer, use a "
                + $"charger.{(RestTime.Unstated(install) is { Length: > 0 } unstated ? $" Sooner if {EnglishText.Or(unstated)} "
                    + $"draw{(unstated.Length == 1 ? "s" : "")} current asleep, which the papers do not say." : "")}";
        }

        if (energy.AlternatorAtSpeed is { } gives && energy.AverageDemand + energy.BaseLoad > gives)
        {
            yield return sounds
                ? "Played loud for long, the system takes more than the alternator gives: let it rest, or the battery empties while you "
                    + "drive."
                : "All together, what was fitted takes more than the alternator gives: switch off what is not needed, or the battery "
                    + "empties while you drive.";
        }

        yield return sounds
            ? "Headlights that dim with the music, a fuse that opens, a device that gets too hot to touch: come back to us."
            : "A lamp that dims or flickers, a fuse that opens, a device that gets too hot to touch: come back to us.";
    }

    private static string Hours(Seconds time)
    {
        var minutes = time.Value / 60;
        return minutes < 90
            ? $"{PlainTable.Number(Math.Floor(minutes / 5) * 5)} minutes"
            : $"{PlainTable.Number(Math.Floor(minutes / 30) / 2)} hours";
    }

    private static string Days(Seconds time)
    {
        var days = Math.Floor(time.Value / 86400);
        return days < 1 ? "less than a day" : days > 90 ? "three months" : days == 1 ? "1 day" : $"{PlainTable.Number(days)} days";
    }
}
