using WireSketch.Installation;
using WireSketch.Quantities;
using WireSketch.Topology;
using WireSketch.Topology.Routes;

namespace WireSketch.Documents.Reports;

/// <summary>Ways of the runs over paths, and what shares a stretch.</summary>
internal static class RouteChapter
{
    public static Chapter Of(InstalledSystem install) => new(
        "routes", "Routes",
        [
            "A run follows the paths that it names. One that names none and has no length takes the shortest way over paths between the "
                + "places or zones of its ends (Dijkstra's algorithm; of equal ways that over fewer paths), to the farthest of several "
                + "ends.",
            "Outside diameter of a conductor: 1.15 times that of its copper and two walls of insulation (0.5 mm up to 1 mm2, 0.7 mm up "
                + "to 6 mm2, 1 mm up to 16 mm2, 1.5 mm above); a line pair is two cables of 5 mm (common practice).",
        ],
        [ReportBuilder.Constant("f_max", "an opening or loom may be filled", Cables.MostFilled, "rule route/overfull (common practice)")],
        [
            .. install.Wiring.Runs.Where(r => !r.Route.IsEmpty).Select(Way),
            .. install.Spec.Paths.Select(p => Stretch(install, p.Id)).OfType<Calculation>()
        ]);

    private static Calculation Way(WiredRun run)
    {
        var known = run.Route.Where(r => r.Path.Length is not null).ToArray();
        var found = run.Run.Along.IsEmpty;
        return new ReportBuilder().Each(
            "l",
            "paths",
            known.Select(r => (r.Id, r.Path.Length!.Value.Value)),
            string.Join(", ", known.Select(r => ReportBuilder.Place(r.Path.Length!.Value.At)).DefaultIfEmpty("no path with a length")))
            .Told(
                "way",
                found ? "the shortest" : "as written",
                found ? $"{ReportBuilder.Place(run.Run.Name.At)} names neither" : ReportBuilder.Place(run.Run.Along[0].At))
            .Gives("L", "length of the way", new Meters(known.Sum(r => r.Path.Length!.Value.Value.Value)), "sum(l)")
            .Says(
                "length taken",
                run.Run.Length is { } own ? $"{own.Words}, as written" : "that of the way",
                "a written length goes before")
            .Of(run.Id);
    }

    private static Calculation? Stretch(InstalledSystem install, string id)
    {
        var runs = install.Wiring.Runs.Where(r => r.Route.Any(a => a.Id == id)).ToArray();
        if (runs.Length == 0)
        {
            return null;
        }

        var path = install.Spec.Paths.First(p => p.Id == id);
        var needs = Cables.Needs(runs);
        var w = new ReportBuilder().Told("shared by", string.Join(", ", runs.Select(r => r.Id)), "the ways above")
            .Each(
                "d",
                "outside diameters",
                runs.SelectMany(r => Enumerable.Repeat((r.Id, Cables.Outside(r.Wire)), Cables.Count(r))),
                "by size, as said above")
            .Number("q", "sum of the squares of d, in mm2", runs.Sum(Cables.Squares) * 1e6, "this row")
            .Gives("D", "inside diameter needed", needs, "√(q/f_max)/1000")
            .Says("loom", Cables.Loom(needs) is { } loom ? $"{loom}" : "none is sold so wide: use two", "the next size that is sold");
        return (path.Opening is { } opening ? Opened(w, runs, opening) : w).Of(id);
    }

    private static ReportBuilder Opened(ReportBuilder w, WiredRun[] runs, Written<Meters> opening) =>
        w.Given("D_o", "opening", opening).Gives("f", "filled", Cables.Fill(runs, opening.Value), "q/(1000·D_o)²");
}
