using WireSketch.Language;
using WireSketch.Testing;

namespace WireSketch.Tests.Language;

/// <summary>What decides a finding is a key with a type: text that is there for people changes nothing.</summary>
public sealed class ZoneAndPassageTests
{
    private const string EngineBay = """
        gear:
          battery: { is: battery, zone: engine bay, origin: factory, capacity: 70 Ah }
          main-breaker: { is: breaker, zone: engine bay, WORDS, rating: 50 A }
          pump: { is: pump, zone: engine bay, current: 30 A }
          strut: { is: chassis point, zone: engine bay, surface: bare metal }
        runs:
          P1: { from: battery.+, to: main-breaker.in, wire: 6 AWG red 105 C, length: 6 in }
          P2: { from: main-breaker.out, to: pump.+, wire: 6 AWG red 105 C, length: 4 ft, protect: loom }
          G1: { from: pump.-, to: strut, wire: 6 AWG black 105 C, length: 12 in }
        """;

    [Theory]
    [InlineData("place: above the gearbox, notes: \"no cover fitted, studs bare\"", "supply/exposed-terminals")]
    [InlineData("place: under its rubber cover", "supply/exposed-terminals")]
    [InlineData("covered: false", "supply/exposed-terminals")]
    [InlineData("covered: true, notes: studs bare", null)]
    [InlineData("covered: true, place: behind the dash, notes: \"glued, potted\"", null)]
    [InlineData("covered: true, reach: panel", null)]
    [InlineData("covered: true, reach: none, place: behind an access panel", "route/out-of-reach")]
    public void Place_and_notes_are_printed_and_never_judged(string words, string? rule)
    {
        string[] judged = ["supply/exposed-terminals", "route/out-of-reach"];
        var found = Compiler.Compile(Example.File(EngineBay.Replace("WORDS", words, StringComparison.Ordinal)), FilesInMemory.None).Findings
            .Select(f => f.Rule)
            .Where(judged.Contains);
        Assert.Equal(rule is null ? [] : new[] { rule }, found);
    }

    [Theory]
    [InlineData("engine bay", ZoneKind.EngineBay, ZoneWall.Firewall, true)]
    [InlineData("engine room cabin", ZoneKind.Cabin, ZoneWall.None, false)]
    [InlineData("rear", ZoneKind.Cargo, ZoneWall.None, false)]
    [InlineData("living area", ZoneKind.LivingArea, ZoneWall.None, false)]
    [InlineData("outside", ZoneKind.Outside, ZoneWall.None, true)]
    public void A_zone_is_the_kind_that_its_whole_id_says(string id, ZoneKind kind, ZoneWall wall, bool exposed)
    {
        var zone = Zone(id, "");
        Assert.Equal((kind, wall, exposed), (zone.Kind, zone.Wall, zone.Exposed));
    }

    [Fact]
    public void What_is_written_of_a_zone_comes_first()
    {
        var zone = Zone("snout", ", kind: engine bay, wall: bulkhead, exposed: false");
        Assert.Equal((ZoneKind.EngineBay, ZoneWall.Bulkhead, false), (zone.Kind, zone.Wall, zone.Exposed));
    }

    private static Zone Zone(string id, string facts) =>
        Compiler.Compile(
            Example.File($"zones:\n  {id}: {{ ambient: 30 C{facts} }}\n  tail: {{ ambient: 30 C }}\n"
                + EngineBay.Replace("WORDS", "covered: true", StringComparison.Ordinal)
                    .Replace("zone: engine bay", $"zone: {id}", StringComparison.Ordinal)),
            FilesInMemory.None)
            .Install!.Spec.Zones.First(z => z.Id == id);
}
