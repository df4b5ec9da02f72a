using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Testing;

namespace WireSketch.Tests.Electrical;

/// <summary>Where a spec is silent, what is assumed is what counts. The figures are hand computed from the defaults.</summary>
public sealed class DefaultsInUseTests
{
    /// <summary>Of 100 Ah half may be used, of lithium four fifths: 50 Ah and 80 Ah.</summary>
    [Theory]
    [InlineData("AGM", 50)]
    [InlineData("flooded", 50)]
    [InlineData("lithium", 80)]
    public void Usable_charge_follows_the_chemistry(string chemistry, double ampHours) => Assert.Equal(ampHours, Compile($$"""
        gear:
          battery: { is: battery, origin: factory, capacity: 100 Ah, chemistry: {{chemistry}} }
        """).Answers.Energy.UsableCharge.Value, 9);

    /// <summary>A charged lithium battery rests at 13.2 V, AGM and gel at 12.8 V, a flooded one at 12.6 V.</summary>
    [Theory]
    [InlineData("lithium", 13.2)]
    [InlineData("AGM", 12.8)]
    [InlineData("gel", 12.8)]
    [InlineData("flooded", 12.6)]
    public void Resting_voltage_follows_the_chemistry(string chemistry, double volts)
    {
        var install = Compile($$"""
            job: { title: Lamp, vehicle: { rest-current: 0 A } }
            gear:
              battery: { is: battery, origin: factory, chemistry: {{chemistry}} }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              G1: { from: battery.-, to: bolt, wire: 4 AWG black, length: 10 in }
            """);
        Assert.Equal(
            volts,
            install.Answers.State(SystemState.EngineOff).Volts[install.Wiring.TerminalsById["battery.+"].Index]!.Value.Value,
            6);
    }

    /// <summary>A remote output of which nobody says more supplies 0.5 A; each input on it draws 20 mA.</summary>
    [Fact]
    public void A_remote_output_supplies_half_an_ampere()
    {
        var control = Assert.Single(Compile("""
            gear:
              battery: { is: battery, origin: factory }
              radio: { is: head unit, origin: factory }
              one: { is: amplifier, wakes-on: [remote], channels: { sub: { power: { 4 ohm: 100 W }, minimum: 4 ohm } } }
              two: { is: amplifier, wakes-on: [remote], channels: { sub: { power: { 4 ohm: 100 W }, minimum: 4 ohm } } }
            runs:
              R1: { from: radio.remote, to: [one.remote, two.remote], wire: 18 AWG blue, length: 10 ft }
            """).Answers.Energy.ControlLoads);
        Assert.True(control.LimitIsAssumed);
        Assert.Equal((0.5, 0.04), (control.Limit.Value, Math.Round(control.Amps.Value, 12)));
    }

    /// <summary>
    /// 5 A over 40 ft and back of 18 AWG, 6.4 ohm per 1000 ft (NEC chapter 9 Table 8: 6.39 to 6.51 at 75 C), lose above 3 % and below 10
    /// % of 14 V.
    /// </summary>
    [Theory]
    [InlineData("head unit, current: 5 A", true)]
    [InlineData("general load, current: 5 A, rated: 12 V", false)]
    [InlineData("general load, current: 5 A, rated: 12 V, critical: true", true)]
    public void Head_units_and_what_is_marked_critical_may_lose_three_percent(string load, bool broken)
    {
        var compiled = Compiler.Compile(Example.File($$"""
            gear:
              battery: { is: battery, origin: factory }
              load: { is: {{load}} }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: load.{{(load.StartsWith("head", StringComparison.Ordinal) ? "battery" : "+")}}, wire: 18 AWG red, length: 20 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: load.-, to: bolt, wire: 18 AWG black, length: 10 in }
            """), FilesInMemory.None);
        Assert.True(compiled.Install is not null, string.Join("; ", compiled.Findings.Select(f => f.Message)));
        var drop = Assert.Single(compiled.Install.Answers.State(SystemState.FullOutput).Loads).Drop.Value;
        Assert.InRange(drop, 0.03, 0.1);
        Assert.Equal(broken, compiled.Findings.Any(f => f.Rule == "supply/drop"));
    }

    /// <summary>A diode lets current from main to second only: the second battery feeds and protects nothing on the main side.</summary>
    [Fact]
    public void A_diode_isolator_feeds_one_way()
    {
        var install = Compile("""
            gear:
              starter: { is: battery, origin: factory }
              house: { is: battery }
              isolator: { is: isolator, type: diode, rating: 100 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: starter.+, to: isolator.main, wire: 4 AWG red, length: 4 ft, fuse: { rating: 100 A, style: strip, at: 6 in } }
              P2: { from: house.+, to: isolator.second, wire: 4 AWG red, length: 4 ft, fuse: { rating: 100 A, style: strip, at: 6 in } }
              G1: { from: house.-, to: bolt, wire: 4 AWG black, length: 10 in }
            """);
        string[] Fed(string battery) =>
            [
                .. install.Wiring.Feeds.Single(f => f.Source.Gear is Battery b && b.Id == battery).Conductors
                    .Select(c => c.Conductor.RunId)
                    .Distinct()
                    .Order(StringComparer.Ordinal)
            ];
        Assert.Equal(["P1", "P2"], Fed("starter"));
        Assert.Equal(["P2"], Fed("house"));
    }

    private static InstalledSystem Compile(string fragment)
    {
        var compiled = Compiler.Compile(Example.File(fragment), FilesInMemory.None);
        return compiled.Install ?? throw new InvalidOperationException(string.Join('\n', compiled.Findings.Select(f => f.Message)));
    }
}
