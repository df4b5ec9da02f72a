using WireSketch.Drawing.Sheets;
using WireSketch.Drawing.Tests.Scenes;
using WireSketch.Language;
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
        var lost = state.Volts[install.Wiring.TerminalsById["battery.+"].Index]!.Value.Value
            - state.Volts[install.Wiring.TerminalsById["amp.+"].Index]!.Value.Value;
        Assert.Equal(
            FormattableString.Invariant($"{amps:0} A · {lost:0.00} V"),
            new Figures(install.Answers, SystemState.FullOutput).Run(run, brief: true));
    }

    [Fact]
    public void A_ground_from_several_devices_shows_the_loss_of_the_farthest()
    {
        var install = Drawn.Compile("large").Install!;
        var state = install.Answers.State(SystemState.FullOutput);
        var shared = install.Wiring.Runs.First(r => r.Kind == Topology.RunKind.Ground && r.From.Length > 1);
        var to = state.Volts[shared.To[0].Nodes[0].Index]!.Value.Value;
        var lost = shared.From.SelectMany(e => e.Nodes).Max(n => Math.Abs(state.Volts[n.Index]!.Value.Value - to));
        Assert.InRange(lost, 0.0005, 0.5);
        Assert.EndsWith(
            $"drop {Quantities.Quantity.Print(new Quantities.Volts(lost), 2)}",
            new Figures(install.Answers, SystemState.FullOutput).Run(shared, brief: false),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_cable_whose_cores_part_shows_the_loss_of_its_first_core()
    {
        var install = Drawn.Compile("camper").Install!;
        var state = install.Answers.State(SystemState.FullOutput);
        var run = install.Wiring.RunsById["W1"];
        var lost = state.Volts[run.From[0].Nodes[0].Index]!.Value.Value - state.Volts[run.To[0].Nodes[0].Index]!.Value.Value;
        Assert.InRange(lost, 0.001, 0.5);
        Assert.EndsWith(
            FormattableString.Invariant($"{lost * 1000:0} mV"),
            new Figures(install.Answers, SystemState.FullOutput).Run(run, brief: true),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_shown_where_nothing_flows_or_nothing_was_computed()
    {
        var install = Drawn.Compile("one-amplifier").Install!;
        Assert.Equal("", new Figures(install.Answers, SystemState.FullOutput).Run(install.Wiring.RunsById["L1"], brief: false));
        Assert.Equal("", new Figures(null, SystemState.FullOutput).Run(install.Wiring.RunsById["P1"], brief: false));
        Assert.Empty(new Figures(null, SystemState.FullOutput).Gear(install.Wiring.GearById["amp"]));
    }

    [Fact]
    public void Heat_by_load_is_the_current_over_what_the_conductor_may_carry()
    {
        var install = Drawn.Compile("one-amplifier").Install!;
        var run = install.Wiring.RunsById["P1"];
        var core = run.Conductors[0].Index;
        var share = install.Answers.State(SystemState.FullOutput).Amps[core].Value / install.Answers.Conductors[core].Ampacity!.Value.Value;
        var figures = new Figures(install.Answers, SystemState.FullOutput, LoadColoring.Load);
        Assert.Equal(share, figures.HeatOf(run)!.Value.Value, 1e-12);
        Assert.StartsWith(FormattableString.Invariant($"{share * 100:0} % of "), figures.Run(run, brief: true), StringComparison.Ordinal);
        Assert.Null(figures.HeatOf(install.Wiring.RunsById["L1"]));
        Assert.Null(new Figures(install.Answers, SystemState.FullOutput).HeatOf(run));
    }

    [Fact]
    public void Heat_by_drop_is_what_the_run_loses_over_the_source_s_volts()
    {
        var install = Drawn.Compile("one-amplifier").Install!;
        var state = install.Answers.State(SystemState.FullOutput);
        var lost = state.Volts[install.Wiring.TerminalsById["battery.+"].Index]!.Value.Value
            - state.Volts[install.Wiring.TerminalsById["amp.+"].Index]!.Value.Value;
        var share =
            new Figures(install.Answers, SystemState.FullOutput, LoadColoring.Drop).HeatOf(install.Wiring.RunsById["P1"])!.Value.Value;
        Assert.Equal(lost / state.Sources.Max(s => s.Volts.Value), share, 1e-12);
    }

    [Theory]
    [InlineData(LoadColoring.Load, 24.9, 0, "under 25 %")]
    [InlineData(LoadColoring.Load, 25, 1, "25 % to 50 %")]
    [InlineData(LoadColoring.Load, 100, 4, "100 % and more")]
    [InlineData(LoadColoring.Drop, 2.5, 3, "2 % to 3 %")]
    public void A_heat_scale_has_five_steps(LoadColoring heat, double percent, int step, string words)
    {
        Assert.Equal(step, ColorScale.StepOf(heat, Quantities.Share.FromPercent(percent)));
        Assert.Equal(words, ColorScale.Words(heat, step));
    }
}
