using WireSketch.Diagnostics;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules.Supply;

/// <summary>Ways of feeding that protection must be judged in: which runs are blamed, and that one cause is told once.</summary>
public sealed class ProtectionScenesTests
{
    private static readonly string[] Protection = [
        "supply/unfused", "supply/fuse-too-far", "supply/fed-from-both-ends", "supply/conductor-reduction", "supply/fuse-above-wire"
    ];

    [Fact]
    public void An_unfused_feed_to_a_block_is_told_once_and_not_for_its_branches() => Assert.Equal(["supply/unfused P1"], Blamed("""
          P1: { from: battery.+, to: block.in, wire: 4 AWG red, length: 12 ft }
          P2: { from: block.out.1, to: pump.+, wire: 10 AWG red, length: 3 ft, fuse: { rating: 20 A, at: 3 in } }
          P3: { from: block.out.2, to: motor.+, wire: 10 AWG red, length: 3 ft }
        """));

    [Fact]
    public void A_block_beside_the_battery_lets_each_branch_answer_for_itself() => Assert.Equal(["supply/unfused P3"], Blamed("""
          P1: { from: battery.+, to: block.in, wire: 4 AWG red, length: 6 in }
          P2: { from: block.out.1, to: pump.+, wire: 10 AWG red, length: 9 ft, fuse: { rating: 20 A, at: 3 in } }
          P3: { from: block.out.2, to: motor.+, wire: 10 AWG red, length: 9 ft }
        """));

    [Fact]
    public void A_feed_whose_branches_are_all_fused_has_its_fuses_too_far() => Assert.Equal(["supply/fuse-too-far P1"], Blamed("""
          P1: { from: battery.+, to: block.in, wire: 4 AWG red, length: 12 ft }
          P2: { from: block.out.1, to: pump.+, wire: 10 AWG red, length: 3 ft, fuse: { rating: 20 A, at: 3 in } }
          P3: { from: block.out.2, to: motor.+, wire: 10 AWG red, length: 3 ft, fuse: { rating: 20 A, at: 3 in } }
        """));

    [Fact]
    public void Distances_add_up_along_the_wire_over_several_runs() => Assert.Equal(["supply/fuse-too-far P2"], Blamed("""
          P1: { from: battery.+, to: block.in, wire: 4 AWG red, length: 12 in }
          P2: { from: block.out.1, to: pump.+, wire: 10 AWG red, length: 9 ft, fuse: { rating: 20 A, at: 10 in } }
        """));

    [Fact]
    public void A_run_between_two_batteries_without_any_fuse_is_told_once() => Assert.Equal(["supply/unfused P1"], Blamed("""
          P1: { from: battery.+, to: second.+, wire: 4 AWG red, length: 12 ft }
          G1: { from: second.-, to: bolt, wire: 4 AWG black, length: 12 in }
        """));

    [Fact]
    public void Neighboring_batteries_may_be_joined_by_a_short_link() => Assert.Empty(Blamed("""
          P1: { from: battery.+, to: second.+, wire: 4 AWG red, length: 10 in }
          G1: { from: second.-, to: bolt, wire: 4 AWG black, length: 12 in }
          P2: { from: second.+, to: pump.+, wire: 10 AWG red, length: 9 ft, fuse: { rating: 20 A, at: 12 in } }
        """));

    [Fact]
    public void A_run_between_two_batteries_with_one_fuse_is_fed_from_both_ends() =>
        Assert.Equal(["supply/fed-from-both-ends P1"], Blamed("""
              P1: { from: battery.+, to: second.+, wire: 4 AWG red, length: 12 ft, fuse: { rating: 100 A, at: 10 in } }
              G1: { from: second.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """));

    [Fact]
    public void An_alternator_that_cannot_give_more_than_its_cable_carries_needs_no_fuse_of_its_own() => Assert.Empty(Blamed("""
          P1: { from: battery.+, to: alternator.+, wire: 4 AWG red, length: 4 ft, fuse: { rating: 125 A, at: 10 in } }
        """));

    [Fact]
    public void A_battery_still_feeds_the_alternator_s_cable() => Assert.Equal(["supply/unfused P1"], Blamed("""
          P1: { from: alternator.+, to: battery.+, wire: 4 AWG red, length: 4 ft }
        """));

    [Fact]
    public void A_thinner_branch_behind_a_fuse_block_is_protected_by_its_own_fuse() => Assert.Empty(Blamed("""
          P1: { from: battery.+, to: fuses.in, wire: 4 AWG red, length: 9 ft, fuse: { rating: 80 A, at: 10 in } }
          P2: { from: fuses.out.1, to: pump.+, wire: 14 AWG red, length: 3 ft }
        """));

    [Fact]
    public void A_switch_or_relay_protects_nothing() => Assert.Equal(["supply/unfused P1"], Blamed("""
          P1: { from: battery.+, to: switch.in, wire: 10 AWG red, length: 3 ft }
          P2: { from: switch.out, to: pump.+, wire: 10 AWG red, length: 3 ft }
        """));

    [Fact]
    public void A_return_wire_in_a_cable_needs_no_fuse() => Assert.Empty(Blamed("""
          P1: { from: battery, to: pump, wire: 2 x 10 AWG, length: 9 ft, fuse: { rating: 20 A, at: 10 in } }
        """));

    private static string[] Blamed(string runs)
    {
        var compiled = Compiler.Compile(Example.File($$"""
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              second: { is: battery, capacity: 70 Ah }
              alternator: { is: alternator, origin: factory, output: 100 A }
              block: { is: distribution block, outputs: 2 }
              fuses: { is: fuse block, outputs: 1, fuses: { 1: 15 A } }
              switch: { is: switch, rating: 30 A }
              pump: { is: pump, current: 8 A }
              motor: { is: motor, current: 8 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
            {{runs.ReplaceLineEndings("\n")}}
            """.ReplaceLineEndings("\n")), FilesInMemory.None);
        Assert.True(compiled.Install is not null, string.Join("; ", compiled.Findings.Select(f => f.Message)));
        return [
            .. compiled.Findings.Where(f => f.Severity != Severity.Advice && Protection.Contains(f.Rule))
                .Select(f => $"{f.Rule} {f.Subjects[0]}")
        ];
    }
}
