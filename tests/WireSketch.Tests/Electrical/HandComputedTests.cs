using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Topology;

namespace WireSketch.Tests.Electrical;

/// <summary>Small systems whose answers are worked out by hand beside them, with Ohm's and Kirchhoff's laws.</summary>
public sealed class HandComputedTests
{
    private const string Relay = """
        gear:
          battery: { is: battery, origin: factory, capacity: 70 Ah }
          ignition: { is: ignition source, origin: factory, live: ignition, limit: 10 A }
          switch: { is: switch, rating: 3 A, closed: [full output, music] }
          relay: { is: relay, coil: 0.15 A, contact: 30 A }
          day: { is: lamp, power: 24 W }
          night: { is: lamp, power: 12 W }
          bolt: { is: chassis point, surface: bare metal }
        runs:
          P1: { from: battery.+, to: relay.30, wire: 12 AWG red, length: 3 ft, fuse: { rating: 10 A, at: 8 in } }
          P2: { from: relay.87, to: day.+, wire: 12 AWG red, length: 3 ft }
          P3: { from: relay.87a, to: night.+, wire: 12 AWG red, length: 3 ft }
          C1: { from: ignition, to: switch.in, wire: 16 AWG, length: 3 ft, tap: true }
          C2: { from: switch.out, to: relay.86, wire: 16 AWG, length: 3 ft }
          G1: { from: relay.85, to: bolt, wire: 16 AWG black, length: 12 in }
          G2: { from: [day.-, night.-], to: bolt, wire: 12 AWG black, length: 12 in, link: 12 in }
        """;

    [Theory]
    [InlineData(SystemState.FullOutput, true), InlineData(SystemState.Music, true)]
    [InlineData(SystemState.Idle, false), InlineData(SystemState.EngineOff, false)]
    public void A_contact_follows_its_coil(SystemState state, bool pulledIn)
    {
        var loads = Solve(Relay).State(state).Loads.ToDictionary(l => l.Path.Gear.Id, l => l.Amps.Value, StringComparer.Ordinal);
        var (on, off) = pulledIn ? ("day", "night") : ("night", "day");
        Assert.Equal(0, loads[off], 1e-3);

        // A lamp of 24 W at 12 V has 6 ohm, one of 12 W twice that: 14.2 V or 12.6 V less a little.
        var source = state is SystemState.EngineOff ? 12.6 : 14.2;
        var ideal = source / (pulledIn ? 6 : 12);
        Assert.InRange(loads[on], 0.98 * ideal, ideal);
        Assert.Equal(pulledIn ? source / 80 : 0, loads["relay"], 0.003);
    }

    [Fact]
    public void A_relay_on_a_constant_circuit_stays_pulled_in_and_drains_the_battery()
    {
        var answers = Solve(Relay.Replace("live: ignition", "live: constant", StringComparison.Ordinal)
            .Replace("closed: [full output, music]", "closed: [full output, music, idle, engine off, standby]", StringComparison.Ordinal));
        var standby = answers.State(SystemState.Standby).Loads.ToDictionary(l => l.Path.Gear.Id, l => l.Amps.Value, StringComparer.Ordinal);
        Assert.Equal(12.6 / 80, standby["relay"], 0.003);
    }

    [Fact]
    public void A_relay_that_holds_itself_needs_somebody_to_pull_it_in()
    {
        // Its coil hangs on its own contact: nothing ever starts it.
        var answers = Solve(Relay.Replace("from: switch.out, to: relay.86", "from: relay.87, to: relay.86", StringComparison.Ordinal));
        Assert.Equal(0, answers.State(SystemState.Music).Loads.Single(l => l.Path.Gear.Id == "day").Amps.Value, 1e-3);
    }

    [Fact]
    public void A_relay_that_switches_itself_off_ends_the_search_for_its_state()
    {
        // A buzzer: the coil hangs on the contact that it opens.
        var answers = Solve(Relay.Replace("from: switch.out, to: relay.86", "from: relay.87a, to: relay.86", StringComparison.Ordinal));
        Assert.True(answers.State(SystemState.Music).IsSolved);
    }

    [Fact]
    public void What_the_vehicle_feeds_empties_its_battery()
    {
        // A radio of 5 A at 12 V, 60 W, takes 60/12.6 A from a battery of which 30 Ah may be used: 6.3 h.
        var answers = Solve("""
            gear:
              battery: { is: battery, origin: factory, capacity: 60 Ah }
              radio: { is: head unit, origin: factory, current: 5 A, standby: 20 mA, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
            runs: {}
            """);
        Assert.Equal(30 * 3600 / (60 / 12.6), answers.Energy.Reserve!.Value.Value, 1);

        // Parked, the radio's 20 mA and the 30 mA of the vehicle itself (common practice, no published source).
        Assert.Equal(30 * 3600 / 0.05, answers.Energy.StandbyTime!.Value.Value, 1);
    }

    [Fact]
    public void A_tap_onto_a_vehicle_circuit_empties_the_same_battery()
    {
        var answers = Solve("""
            gear:
              battery: { is: battery, origin: factory, capacity: 60 Ah }
              plug: { is: tap point, origin: factory, carries: constant, limit: 15 A }
              alarm: { is: general load, current: 30 mA, behaves: current, always-live: true }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: plug, to: alarm.+, wire: 16 AWG red, length: 3 ft, tap: true, fuse: { rating: 3 A, at: 4 in } }
              G1: { from: alarm.-, to: bolt, wire: 16 AWG black, length: 12 in }
            """);

        // 30 Ah at 30 mA and as much for the vehicle itself: 500 h.
        Assert.Equal(500 * 3600, answers.Energy.StandbyTime!.Value.Value, 1);
    }

    [Theory, InlineData(SystemState.EngineOff, false), InlineData(SystemState.Music, true)]
    public void A_diode_lets_the_alternator_charge_and_keeps_the_starter_battery_full(SystemState state, bool charges)
    {
        var answers = Solve("""
            gear:
              starter: { is: battery, origin: factory, capacity: 60 Ah }
              house: { is: battery, capacity: 60 Ah }
              diode: { is: isolator, type: diode, rating: 100 A, drop: 0.7 V }
              pump: { is: pump, current: 10 A, always-live: true }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: starter.+, to: diode.main, wire: 4 AWG red, length: 3 ft, fuse: { rating: 60 A, at: 8 in } }
              P2: { from: house.+, to: diode.second, wire: 4 AWG red, length: 3 ft, fuse: { rating: 60 A, at: 8 in } }
              P3: { from: house.+, to: pump.+, wire: 10 AWG red, length: 3 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: house.-, to: bolt, wire: 4 AWG black, length: 12 in }
              G2: { from: pump.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """).State(state);
        var house = answers.Sources.Single(s => s.Id == "house").Amps.Value;
        var starter = answers.Sources.Single(s => s.Id == "starter").Amps.Value;
        if (charges)
        {
            // 14.2 V less the diode, its slope and some wire is above 12.6 V: the pump's 10 A come from the alternator, and some charge
            // besides.
            Assert.InRange(house, -3.6 * (14.2 - 0.7 - 12.6), 0);
        }
        else
        {
            Assert.Equal(10, house, 1e-3);
            Assert.Equal(0, starter, 1e-6);
        }
    }

    private static ElectricalResults Solve(string fragment)
    {
        var compiled = Compiler.Compile(Example.File(fragment), FilesInMemory.None);
        Assert.NotNull(compiled.Install);
        return ElectricalSolver.Solve(WiringResolver.Resolve(compiled.Spec, SizeChoices.None).Value);
    }
}
