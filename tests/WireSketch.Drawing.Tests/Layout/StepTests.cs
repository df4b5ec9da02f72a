using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;
using WireSketch.Drawing.Layout.P3Place;
using WireSketch.Drawing.Layout.P4Route;
using WireSketch.Drawing.Layout.P5Label;
using WireSketch.Drawing.Layout.Search;
using Xunit;

namespace WireSketch.Drawing.Tests.Layout;

/// <summary>What each step of laying out leaves behind for the next.</summary>
public class StepTests
{
    private static IEnumerable<(string Name, ColumnOrder Order)> Ordered(int passes)
    {
        foreach (int devices in (int[])[10, 25, 45])
        {
            for (int seed = 1; seed <= 4; seed++)
            {
                var model = ModelReader.Read(SyntheticSystem.Of(devices, seed));
                var choices = Choices.For(
                    model,
                    StartColumns.ByRank(StartColumns.Ranks(model), model, [2, 2, 2, 3]),
                    StartFacing.Of(model));
                yield return ($"{devices} devices, seed {seed}", Orderer.First(WireSegmenter.Cut(model, choices), passes));
            }
        }
    }

    [Fact]
    public void Columns_hold_every_body_once_and_in_its_zone()
    {
        foreach (var (name, order) in Ordered(1))
        {
            var w = order.Graph;
            Assert.Equal(Enumerable.Range(0, w.Items), order.Items.SelectMany(c => c).Order());
            for (int c = 0; c < order.Items.Length; c++)
            {
                Assert.All(order.Items[c], i => Assert.True(w.ColumnOf(i) == c, name));
                Assert.All(order.Items[c].Where(i => !w.IsDummy(i)), b => Assert.Equal(w.Columns.Zone[c], w.Model.BodyZone[b]));
                Assert.True(!w.Columns.IsWall[c] || order.Items[c].All(w.IsDummy), name);
            }
        }
    }

    [Fact]
    public void The_pieces_of_every_link_join_its_terminals_channel_by_channel()
    {
        foreach (var (name, order) in Ordered(1))
        {
            var w = order.Graph;
            for (int l = 0; l < w.Model.Links; l++)
            {
                int at = w.ChainReversed[l] ? w.Model.LinkTo[l] : w.Model.LinkFrom[l];
                int end = w.ChainReversed[l] ? w.Model.LinkFrom[l] : w.Model.LinkTo[l];
                foreach (int p in w.Chain(l))
                {
                    var segment = w.Segment[p];
                    Assert.True(segment.A == at || segment.B == at, name);
                    int next = segment.A == at ? segment.B : segment.A;
                    Assert.Equal(segment.Channel, w.NodeChannel[next]);
                    at = next >= w.Model.Slots ? w.Model.Slots + ((next - w.Model.Slots) ^ 1) : next;
                }

                Assert.Equal(end, at);
            }
        }
    }

    [Fact]
    public void Sifting_never_adds_crossings_and_its_gain_is_what_counting_finds()
    {
        foreach (var (name, order) in Ordered(0))
        {
            int before = Crossing.Count(order), gain = 0;
            var items = new ItemSifter(order);
            var terminals = new TerminalSifter(order);
            for (int c = 0; c < order.Items.Length; c++)
            {
                gain += items.Sift(c);
                foreach (int b in order.Items[c].Where(i => !order.Graph.IsDummy(i)))
                {
                    gain += terminals.Sift(b);
                }
            }

            Assert.True(gain >= 0, name);
            Assert.True(before - Crossing.Count(order) == gain, $"{name}: {before} - {Crossing.Count(order)} is not {gain}");
        }
    }

    [Fact]
    public void A_still_order_gains_nothing_from_exchanging_neighbors()
    {
        foreach (var (name, order) in Ordered(60))
        {
            int count = Crossing.Count(order);
            for (int c = 0; c < order.Items.Length; c++)
            {
                if (order.Graph.Columns.IsWall[c])
                {
                    continue;
                }

                int[] items = order.Items[c];
                for (int k = 0; k + 1 < items.Length; k++)
                {
                    (items[k], items[k + 1]) = (items[k + 1], items[k]);
                    order.SetKeys();
                    Assert.True(Crossing.Count(order) >= count, $"{name}, column {c}, place {k}");
                    (items[k], items[k + 1]) = (items[k + 1], items[k]);
                }
            }

            order.SetKeys();
        }
    }

    [Fact]
    public void Places_keep_the_order_the_distances_and_the_grid()
    {
        foreach (var (name, order) in Ordered(4))
        {
            foreach (int height in (int[])[0, 900])
            {
                var placed = Placer.Place(order, height);
                foreach (int[] column in order.Items)
                {
                    Assert.All(column, i => Assert.True(placed.Y[i] % 4 == 0 && placed.Y[i] - placed.Frames.Up[i] >= 0, name));
                    Assert.All(column, i => Assert.True(placed.Y[i] + placed.Frames.Down[i] <= placed.Height, name));
                    for (int k = 1; k < column.Length; k++)
                    {
                        int above = placed.Y[column[k - 1]] + placed.Frames.Down[column[k - 1]];
                        Assert.True(above <= placed.Y[column[k]] - placed.Frames.Up[column[k]], $"{name}: {above}");
                    }
                }

                Assert.All(placed.Frames.Dy, dy => Assert.Equal(0, dy % 4));
            }
        }
    }

    [Fact]
    public void A_sheet_placed_near_another_keeps_its_own_order_and_the_distances()
    {
        var chance = new SeededRandom(2);
        foreach (var (name, order) in Ordered(4))
        {
            var placed = Placer.Place(order, 900);
            int[] at = order.Positions();
            int column = chance.Next(order.Items.Length);
            foreach (int i in order.Items[column])
            {
                at[i] = chance.Next(ColumnOrder.Whole);
            }

            var near = Placer.PlaceNear(order.Resorted(column, at), placed);
            foreach (int[] items in near.Order.Items)
            {
                for (int k = 1; k < items.Length; k++)
                {
                    Assert.True(near.Y[items[k - 1]] + near.Frames.Down[items[k - 1]] <= near.Y[items[k]] - near.Frames.Up[items[k]], name);
                }
            }
        }
    }

    [Fact]
    public void Only_free_terminals_change_sides()
    {
        int changed = 0;
        for (int seed = 1; seed <= 3; seed++)
        {
            var graph = SyntheticSystem.Of(25, seed);
            var sheet = SheetArranger.Arrange(graph, new(740, 440, Effort: 0.1));
            foreach (var (box, device) in graph.Devices.Zip(sheet.Devices).Where(d => d.First.Shape == DeviceShape.Box))
            {
                foreach (var (port, placed) in box.Ports.Zip(device.Ports))
                {
                    changed += port.Side == placed.Side ? 0 : 1;
                    Assert.True(port.Side == placed.Side || port.Free, $"{port.Id}, seed {seed}");
                }
            }
        }

        Assert.True(changed > 0, "no terminal changed sides");
    }

    [Fact]
    public void Repair_leaves_no_clash()
    {
        int repaired = 0;
        var chance = new SeededRandom(1);
        foreach (var (name, order) in Ordered(1))
        {
            for (int shuffle = 0; shuffle < 20; shuffle++)
            {
                int[] at = order.Positions().Select(_ => chance.Next(ColumnOrder.Whole)).ToArray();
                var mixed = order;
                for (int c = 0; c < order.Items.Length; c++)
                {
                    mixed = mixed.Resorted(c, at);
                }

                var routed = Router.Route(Placer.Place(mixed, 0));
                repaired += routed.Clashes.Count;
                Assert.True(ClashRepair.Repair(routed).Clashes.Count == 0, name);
            }
        }

        Assert.True(repaired > 0, "no sheet had a clash to repair");
    }

    [Fact]
    public void Tracks_that_share_ordinates_stand_apart()
    {
        foreach (var (name, order) in Ordered(4))
        {
            var sheet = Labeler.Label(ClashRepair.Repair(Router.Route(Placer.Place(order, 0))), 0);
            foreach (int[] tracks in sheet.Routed.Tracks)
            {
                for (int i = 0; i < tracks.Length; i++)
                {
                    for (int j = i + 1; j < tracks.Length; j++)
                    {
                        var r = sheet.Routed;
                        bool share = r.Upper[tracks[i]] <= r.Lower[tracks[j]] && r.Upper[tracks[j]] <= r.Lower[tracks[i]];
                        int gap = sheet.VerticalX[tracks[j]] - sheet.VerticalX[tracks[i]];
                        Assert.True(!share || gap >= r.Half[tracks[i]] + r.Half[tracks[j]], $"{name}: {gap}");
                    }
                }
            }
        }
    }

    // -ln of a uniform number has mean 1 (an exponential distribution); 10,000 draws come within a few hundredths.
    [Fact]
    public void An_acceptance_threshold_is_spread_like_the_logarithm_of_chance()
    {
        var chance = new SeededRandom(3);
        var draws = Enumerable.Range(0, 10_000).Select(_ => chance.AcceptanceThreshold()).ToArray();
        Assert.InRange(draws.Average(), 960, 1040);
        Assert.InRange(draws.Count(d => d > 693) / 10_000.0, .47, .53);
        Assert.InRange(draws.Count(d => d > 2303) / 10_000.0, .08, .12);
    }
}
