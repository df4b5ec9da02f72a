using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Testing;
using WireSketch.Text;
using WireSketch.Topology.Routes;

namespace WireSketch.Tests.Topology;

public sealed class RouteTests
{
    /// <summary>Dijkstra's algorithm against trying every way there is, on 300 random nets of paths.</summary>
    [Fact]
    public void The_shortest_way_is_that_of_all_ways_tried()
    {
        var random = new Random(20261127);
        var found = 0;
        for (var net = 0; net < 300; net++)
        {
            var places = random.Next(3, 8);
            var paths = Enumerable.Range(0, random.Next(places - 1, 2 * places))
                .Select(i => Path($"p{i}", $"n{random.Next(places)}", $"n{random.Next(places)}", random.Next(1, 30)))
                .ToArray();
            var finder = new RouteFinder([.. paths]);
            var all = new List<double>();
            Try("n0", 0, ["n0"]);
            var way = finder.Farthest("n0", ["n1"]);
            Assert.Equal(all.Count > 0, !way.IsEmpty);
            if (!way.IsEmpty)
            {
                Assert.Equal(all.Min(), RouteFinder.Length(way).Value, 1e-9);
                Assert.True(Leads(way, "n0", "n1"));
                found++;
            }

            void Try(string here, double length, HashSet<string> met)
            {
                if (here == "n1")
                {
                    all.Add(length);
                    return;
                }

                foreach (var path in paths.Where(p => p.From!.Value.Value == here || p.To!.Value.Value == here))
                {
                    var there = path.From!.Value.Value == here ? path.To!.Value.Value : path.From.Value.Value;
                    if (met.Add(there))
                    {
                        Try(there, length + path.Length!.Value.Value.Value, met);
                        met.Remove(there);
                    }
                }
            }
        }

        Assert.InRange(found, 150, 300);
    }

    [Fact]
    public void A_run_without_length_and_path_takes_the_shortest_way()
    {
        var install = Compile("""
            P1: { from: battery.+, to: fridge.+, wire: 10 AWG red, fuse: { rating: 15 A, at: 8 in }, protect: loom, through: firewall grommet }
            P2: { from: battery.+, to: lamp.+, wire: 14 AWG red, fuse: { rating: 10 A, at: 8 in }, protect: loom, through: firewall grommet }
            """);
        var run = install.Wiring.RunsById["P1"];
        Assert.Equal(["firewall", "left sill"], run.Route.Select(r => r.Id));
        Assert.Equal(Meters.FromFeet(11).Value, run.LengthTaken.Value, 1e-9);
        Assert.NotNull(run.Length);

        // To the place of a device rather than to its zone, where a path leads there.
        Assert.Equal(["firewall", "left sill", "tail"], install.Wiring.RunsById["P2"].Route.Select(r => r.Id));
    }

    [Fact]
    public void A_hazard_on_a_way_that_was_found_is_told()
    {
        var result = Compiler.Compile(Text("""
            P1: { from: battery.+, to: lamp.+, wire: 14 AWG red, fuse: { rating: 10 A, at: 8 in }, protect: loom, through: firewall grommet }
            """), FilesInMemory.None);
        Assert.Contains(result.Findings, f => f.Rule == "route/near-hazard" && f.Subjects.Contains("tail"));
        Assert.DoesNotContain(result.Findings, f => f.Rule == "route/no-length");
    }

    [Fact]
    public void No_way_is_a_missing_length()
    {
        var result = Compiler.Compile(Text("P1: { from: battery.+, to: bolt, wire: 14 AWG red }"), FilesInMemory.None);
        Assert.Contains(
            result.Findings,
            f => f.Rule == "route/no-length" && f.Message.Contains("none of the paths", StringComparison.Ordinal));
    }

    // 10 AWG: 5.261 mm² is 2.588 mm across (ASTM B258); times 1.15 and two walls of 0.7 mm: 4.376 mm. 14 AWG: 1.628 mm gives 3.272 mm.
    // √((4.376² + 3.272²)/0.4) = 8.64 mm: 3/8 in is 9.5 mm. One alone: 6.92 mm and 5.17 mm: 3/8 in and 1/4 in.
    [Fact]
    public void What_shares_a_stretch_shares_its_loom()
    {
        var parts = WireSketch.Documents.Lists.PartsList.From(Install(), WireSketch.Documents.Lists.CutList.From(Install()));
        var looms = parts.Lines.Where(l => l.Item.StartsWith("loom", StringComparison.Ordinal)).ToArray();

        // 7 ft and 4 ft shared, 3 ft alone, each with a tenth of slack, rounded up to an inch: 93, 53 and 40 in.
        Assert.Equal(["loom, 3/8 in (9.5 mm) inside", "loom, 1/4 in (6.4 mm) inside"], looms.Select(l => l.Item));
        Assert.Equal([Math.Round((93 + 53) / 12.0, 2), Math.Round(40 / 12.0, 2)], looms.Select(l => l.Quantity));

        static WireSketch.Installation.InstalledSystem Install() => Compile("""
            P1: { from: battery.+, to: fridge.+, wire: 10 AWG red, fuse: { rating: 15 A, at: 8 in }, protect: loom, through: firewall grommet }
            P2: { from: battery.+, to: lamp.+, wire: 14 AWG red, fuse: { rating: 10 A, at: 8 in }, protect: loom, through: firewall grommet }
            """);
    }

    private static bool Leads(IEnumerable<VehiclePath> way, string from, string to)
    {
        var here = from;
        foreach (var path in way)
        {
            here = path.From!.Value.Value == here ? path.To!.Value.Value : path.To!.Value.Value == here ? path.From.Value.Value : "";
        }

        return here == to;
    }

    private static VehiclePath Path(string name, string from, string to, double meters) => new()
    {
        Name = new(name, name, default),
        From = new(from, from, default),
        To = new(to, to, default),
        Length = new(new Meters(meters), "", default),
    };

    private static WireSketch.Installation.InstalledSystem Compile(string runs)
    {
        var result = Compiler.Compile(Text(runs), FilesInMemory.None);
        return result.Install ?? throw new InvalidOperationException(string.Join('\n', result.Findings));
    }

    private static SourceFile Text(string runs) => new("a.wsk.yaml", $$"""
        wiresketch: 1
        job: { title: Routes }
        paths:
          firewall: { from: engine bay, to: dash, length: 7 ft, passes: grommet }
          left sill: { from: dash, to: rear, length: 4 ft }
          tunnel: { from: dash, to: rear, length: 9 ft }
          tail: { from: rear, to: tailgate, length: 3 ft, hazard: fuel line }
        gear:
          battery: { is: battery, zone: engine bay, origin: factory }
          fridge: { is: fridge, zone: rear, power: 60 W }
          lamp: { is: lamp, zone: rear, place: tailgate, power: 20 W }
          bolt: { is: chassis point, surface: bare metal }
        runs:
        {{runs.ReplaceLineEndings("\n  ").Insert(0, "  ")}}
          G1: { from: fridge.-, to: bolt, wire: 10 AWG black, length: 12 in }
          G2: { from: lamp.-, to: bolt, wire: 14 AWG black, length: 12 in }
        """);
}
