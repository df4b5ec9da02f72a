using CsCheck;
using WireSketch.Documents.Lists;
using WireSketch.Testing;

namespace WireSketch.Tests.Documents.Lists;

public sealed class CutListTests
{
    private const string Runs = """
        P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 17 ft, fuse: { rating: 60 A, at: 12 in }, through: firewall grommet }
        G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 14 in }
        R1: { from: switched, to: amp.remote, wire: 18 AWG blue, length: 10 ft }
        S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
        """;

    // By hand: 12 in + 10 % = 13.2 in, up to 14; 192 in + 10 % = 211.2 in, up to 212; 14 in + 10 % = 15.4, up to 16; 120 + 12 = 132; 108
    // + 10.8 = 118.8, up to 119.
    [Fact]
    public void Each_piece_has_ten_per_cent_of_slack_and_is_rounded_up_to_an_inch()
    {
        var cuts = CutList.From(Built.Of(Runs).Install);
        Assert.Equal(
            [("P1-1", 14), ("P1-2", 212), ("G1", 16), ("R1", 132), ("S1", 119), ("S1.link1", 0), ("S1.link2", 0)],
            cuts.Pieces.Select(p => (p.Id, (int)Math.Round(p.Cut.Inches, 6))));
        Assert.Equal([("battery.+", "P1.fuse.in"), ("P1.fuse.out", "amp.+")], cuts.Pieces.Take(2).Select(p => (p.From, p.To)));
        Assert.Equal(2, cuts.Pieces.Single(p => p.Id == "S1").Cores);
    }

    [Fact]
    public void Only_the_piece_that_passes_the_wall_says_so()
    {
        var cuts = CutList.From(Built.Of(Runs).Install);
        Assert.Equal([false, true], cuts.Pieces.Take(2).Select(p => p.Remarks.Contains("through firewall grommet")));
    }

    [Theory]
    [InlineData("settings: { slack: 6 in }", 18)]
    [InlineData("settings: { slack: 0 % }", 12)]
    [InlineData("settings: { slack: 25 %, round-to: 6 in }", 18)]
    public void Slack_and_rounding_can_be_set(string settings, int inches)
    {
        var cuts = CutList.From(Built.Of(Runs, settings).Install);
        Assert.Equal(inches, cuts.Pieces[0].Cut.Inches, 6);
    }

    [Fact]
    public void A_metric_spec_is_rounded_to_centimeters_and_told_in_meters()
    {
        var cuts = CutList.From(
            Built.Of(Runs.Replace("17 ft", "5.18 m", StringComparison.Ordinal)
                .Replace("12 in", "30 cm", StringComparison.Ordinal)).Install);
        Assert.Equal(0.33, cuts.Pieces[0].Cut.Value, 9);
        Assert.Equal("5.37 m (17 ft 7.4 in)", cuts.Lengths.Both(cuts.Pieces[1].Cut));
    }

    [Fact]
    public void A_run_without_a_length_must_be_measured_first()
    {
        var cuts = CutList.From(Built.Of(Runs.Replace(", length: 14 in", "", StringComparison.Ordinal)).Install);
        Assert.Contains(cuts.Pieces.Single(p => p.Id == "G1").Remarks, r => r.Contains("measure", StringComparison.Ordinal));
    }

    [Fact]
    public void A_cable_with_a_fuse_in_one_core_is_one_piece_that_says_where()
    {
        var cuts = CutList.From(Built.Of(
            "P1: { from: [battery.+, battery.-], to: [amp.+, amp.-], wire: 2 x 8 AWG, length: 10 ft, fuse: { rating: 40 A, at: 12 in } "
                + "}\nR1: { from: switched, to: amp.remote, wire: 18 AWG, length: 10 ft }").Install);
        var piece = cuts.Pieces[0];
        Assert.Equal(("P1", 2), (piece.Id, piece.Cores));
        Assert.Contains("one core is cut for the fuse, 1 ft from battery.+, battery.-", piece.Remarks);
    }

    [Fact]
    public void Cut_lengths_hold_the_slack_and_waste_less_than_a_step() =>
        Gen.Select(Gen.Double[0.001, 100], Gen.Double[0, 0.5], Gen.Double[0, 1], Gen.Double[0.001, 0.5])
            .Sample((length, share, more, step) =>
            {
                var cut = new CutLength(new(share), new(more), new(step), true).For(new(length)).Value;
                var wanted = (length * (1 + share)) + more;
                Assert.InRange(cut, wanted - (1e-5 * step), wanted + step + 1e-9);
                Assert.Equal(0, Math.IEEERemainder(cut, step), 1e-6);
            });

    [Fact]
    public void Every_conductor_of_every_shipped_spec_is_in_exactly_one_piece()
    {
        foreach (var name in ShippedSpecs.Good)
        {
            var result = Compiler.Compile(ShippedSpecs.Open(name), ShippedSpecs.Files);
            var cut = CutList.From(result.Install!).Pieces
                .SelectMany(p => p.Conductors.Select(c => c.Id))
                .Order(StringComparer.Ordinal)
                .ToArray();
            Assert.Equal(result.Install!.Wiring.Conductors.Select(c => c.Id).Order(StringComparer.Ordinal), cut);
        }
    }

    // 5 pieces of 6, 5, 4, 3 and 2 m from lengths of 10 m: 6 + 4 and 5 + 3 + 2 fill two exactly.
    [Fact]
    public void Wire_that_is_sold_in_lengths_is_counted_in_lengths()
    {
        var built = Built.Of(
            """
            P1: { from: battery.+, to: amp.+, wire: red, length: 6 m }
            P2: { from: battery.+, to: amp.+, wire: red, length: 5 m }
            P3: { from: battery.+, to: amp.+, wire: red, length: 4 m }
            P4: { from: battery.+, to: amp.+, wire: red, length: 3 m }
            P5: { from: battery.+, to: amp.+, wire: red, length: 2 m }
            """,
            "settings: { slack: 0 % }\nwires:\n  red: { size: 21 mm2, color: red, stock: 10 m, price: 40 }");
        var cuts = CutList.From(built.Install);
        var total = Assert.Single(cuts.Totals);
        Assert.Equal((5, 2, 20.0), (total.Pieces, total.Stocks, Math.Round(total.Total.Value, 9)));
        var line = PartsList.From(built.Install, cuts).Lines.Single(l => l.Group == PartGroup.Wire);
        Assert.Equal((2, 80.0), ((int)line.Quantity, line.Cost));
    }
}
