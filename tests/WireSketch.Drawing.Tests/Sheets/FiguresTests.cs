using WireSketch.Drawing.Sheets;
using WireSketch.Drawing.Tests.Scenes;
using WireSketch.Electrical;
using Xunit;

namespace WireSketch.Drawing.Tests.Sheets;

/// <summary>Numbers on the drawing are those of the answers.</summary>
public sealed class FiguresTests
{
    [Fact]
    public void A_supply_run_shows_its_amps_and_what_is_lost_from_end_to_end()
    {
        var install = Drawn.Compile("one-amplifier").Install!;
        var state = install.Answers.State(SystemState.FullOutput);
        var run = install.Wiring.RunsById["P1"];
        var amps = Math.Abs(state.Amps[run.Conductors[0].Index].Value);
        var lost = state.Volts[install.Wiring.TerminalsById["battery.+"].Index]!.Value.Value - state.Volts[install.Wiring.TerminalsById["amp.+"].Index]!.Value.Value;
        Assert.Equal(FormattableString.Invariant($"{amps:0} A · {lost:0.00} V"), new Figures(install.Answers, SystemState.FullOutput).Run(run, brief: true));
    }

    [Fact]
    public void A_ground_from_several_devices_shows_the_loss_of_the_farthest()
    {
        var install = Drawn.Compile("large").Install!;
        var shared = install.Wiring.Runs.First(r => r.Kind == Topology.RunKind.Ground && r.From.Length > 1);
        Assert.DoesNotContain("drop 0 V", new Figures(install.Answers, SystemState.FullOutput).Run(shared, brief: false), StringComparison.Ordinal);
    }

    [Fact]
    public void A_cable_whose_cores_part_shows_the_loss_of_its_first_core()
    {
        var install = Drawn.Compile("camper").Install!;
        var state = install.Answers.State(SystemState.FullOutput);
        var run = install.Wiring.RunsById["W1"];
        var lost = state.Volts[run.From[0].Nodes[0].Index]!.Value.Value - state.Volts[run.To[0].Nodes[0].Index]!.Value.Value;
        Assert.InRange(lost, 0.001, 0.5);
        Assert.EndsWith(FormattableString.Invariant($"{lost * 1000:0} mV"), new Figures(install.Answers, SystemState.FullOutput).Run(run, brief: true), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_shown_where_nothing_flows_or_nothing_was_computed()
    {
        var install = Drawn.Compile("one-amplifier").Install!;
        Assert.Equal("", new Figures(install.Answers, SystemState.FullOutput).Run(install.Wiring.RunsById["L1"], brief: false));
        Assert.Equal("", new Figures(null, SystemState.FullOutput).Run(install.Wiring.RunsById["P1"], brief: false));
        Assert.Empty(new Figures(null, SystemState.FullOutput).Gear(install.Wiring.GearById["amp"]));
    }
}
