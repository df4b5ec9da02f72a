using WireSketch.Language;
using WireSketch.Testing;

namespace WireSketch.Tests.Electrical;

/// <summary>
/// Drop counts from the source that gives the current in a state, by Kirchhoff's current law followed back from the load.
/// </summary>
public sealed class GivingSourceTests
{
    [Theory]
    [InlineData(SystemState.FullOutput, "main-battery.+")]
    [InlineData(SystemState.EngineOff, "rear-battery.+")]
    public void A_battery_that_is_charged_is_not_where_the_current_comes_from(SystemState state, string from)
    {
        var compiled = Compiler.Compile(ShippedSpecs.Open("specs/two-batteries.wsk.yaml"), ShippedSpecs.Files);
        var answer = compiled.Install!.Answers.State(state);
        var load = answer.Loads.Single(l => l.Path.Gear.Id == "amp");
        Assert.Equal(from, load.Path.Source!.Id);

        // What is lost is the difference between what the source has at its terminals and what the amplifier has, whole.
        var source = answer.Sources.Single(s => s.Id == load.Path.Source.Gear!.Id);
        Assert.Equal(1 - (load.Between / source.Volts), load.Drop.Value, 1e-9);
        Assert.True(source.Id == "main-battery" || source.Amps.Value > 0);
    }

    [Fact]
    public void A_long_thin_way_from_the_alternator_is_told_though_a_battery_sits_beside_the_load()
    {
        var text = ShippedSpecs.Open("specs/two-batteries.wsk.yaml").Text;
        const string thick = "isolator.second, wire: 4/0 AWG";
        Assert.Contains(thick, text, StringComparison.Ordinal);
        var thin = Compiler.Compile(
            new("specs/two-batteries.wsk.yaml", text.Replace(thick, "isolator.second, wire: 2 AWG", StringComparison.Ordinal)),
            ShippedSpecs.Files);
        Assert.Contains(thin.Findings, f => f.Rule == "supply/drop" && f.Subjects[0] == "P2");
    }
}
