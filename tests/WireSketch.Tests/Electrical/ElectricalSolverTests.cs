using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Topology;

namespace WireSketch.Tests.Electrical;

public sealed class ElectricalSolverTests
{
    private const string Simple = """
        gear:
          battery: { is: battery, zone: cabin, capacity: 60 Ah, internal: 8 mohm, rest: 12.6 V }
          amp: { is: amplifier, zone: cabin, supply: { efficiency: 80 % }, wakes-on: [always], channels: { sub: { power: { 4 ohm: 800 W, 2 ohm: 1200 W }, minimum: 2 ohm } } }
          sub: { is: subwoofer, zone: cabin, coils: 2 x 4 ohm, handles: 600 W }
          bolt: { is: chassis point, zone: cabin, surface: bare metal }
        runs:
          P1: { from: battery.+, to: amp.+, wire: 4 AWG, length: 17 ft, fuse: { rating: 100 A, style: strip, at: 12 in } }
          G1: { from: amp.-, to: bolt, wire: 4 AWG, length: 14 in }
          S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
        """;

    public static TheoryData<string> Specs => [.. ShippedSpecs.Good];

    [Theory, MemberData(nameof(Specs))]
    public void Shipped_specs_have_an_operating_point_in_every_state(string name)
    {
        var read = SpecReader.Read(ShippedSpecs.Open(name), ShippedSpecs.Files);
        var answers = ElectricalSolver.Solve(WiringResolver.Resolve(read.Value, SizeChoices.None).Value);
        Assert.All(answers.States, s => Assert.True(s.IsSolved, $"{name}: {s.State}"));
        Assert.All(answers.State(SystemState.FullOutput).Loads, l => Assert.InRange(l.Between.Value, 10, 15));
    }

    [Fact]
    public void The_operating_point_is_that_of_the_closed_form()
    {
        // One constant-power load behind one resistance: V = (E + √(E² − 4RP)) / 2. Music, engine stopped: an eighth of the full power.
        var (answers, _) = Solve(Simple);
        var state = answers.State(SystemState.EngineOff);
        var load = Assert.Single(state.Loads);
        var watts = answers.Channels[0].Power!.Value.Value / 8 / 0.8;
        var wire = 1.02 / 58 / (Math.PI / 4 * 0.127 * 0.127 * Math.Pow(92, 2 * 32 / 39.0)) * (1 + (0.00393 * 10));
        var copper = wire * 0.3048 * (17 + (14.0 / 12));
        var loop = 0.008 + 0.001 + 0.0005 + (6 * 0.0002) + (0.058 / 100) + copper;
        var volts = (12.6 + Math.Sqrt((12.6 * 12.6) - (4 * loop * watts))) / 2;
        Assert.Equal(volts, load.Between.Value, 2e-4);
        Assert.Equal(watts, load.Watts.Value, 1e-6 * watts);
        Assert.Equal(load.SupplyDrop.Value + load.ReturnDrop.Value, state.Sources[0].Volts.Value - load.Between.Value, 1e-9);
        Assert.Equal((load.SupplyDrop + load.ReturnDrop) / state.Sources[0].Volts, load.Drop.Value, 1e-12);
    }

    [Fact]
    public void Current_warms_a_conductor_and_its_resistance_rises()
    {
        var (answers, wiring) = Solve(Simple);
        var p1 = answers.Conductors.Single(c => c.Conductor.Id == "P1-2");
        var amps = answers.State(SystemState.FullOutput).Amps[p1.Conductor.Index].Value;
        Assert.Equal(80, p1.Conductor.Wire.Insulation.Value);

        // 33 CFR 183.425 Table 5: 4 AWG, 80 C, 130 A; that current makes it 80 C warm at 30 C.
        var expected = 30 + (50 * amps * amps / (p1.TableAmpacity!.Value.Value * p1.TableAmpacity!.Value.Value));
        Assert.Equal(expected, p1.Temperature.Value, 0.1);
        Assert.True(p1.Resistance > p1.Resistance20);
        Assert.Equal(wiring.Conductors.Length, answers.Conductors.Length);
    }

    [Fact]
    public void The_alternator_holds_its_volts_until_its_limit_and_the_battery_makes_up_the_rest()
    {
        var (free, _) = Solve("job: { title: Example, vehicle: { alternator: 400 A } }\n" + Simple);
        var (short_, _) = Solve("job: { title: Example, vehicle: { alternator: 60 A } }\n" + Simple);
        var (alternator, battery) = (free.State(SystemState.FullOutput).Sources[1], free.State(SystemState.FullOutput).Sources[0]);
        Assert.Equal("(alternator)", alternator.Id);
        Assert.False(alternator.AtItsLimit);
        Assert.InRange(alternator.Volts.Value, 14, 14.2);
        Assert.True(battery.Amps.Value < 0, "it is charged");
        (alternator, battery) = (short_.State(SystemState.FullOutput).Sources[1], short_.State(SystemState.FullOutput).Sources[0]);
        Assert.True(alternator.AtItsLimit);
        Assert.Equal(60, alternator.Amps.Value, 1e-6);
        Assert.True(battery.Amps.Value > 0, "it gives");
        Assert.True(battery.Volts.Value < 12.6);

        // At idle, half of it.
        Assert.Equal(30, short_.State(SystemState.Idle).Sources[1].Amps.Value, 1e-6);
    }

    [Fact]
    public void What_cannot_be_supplied_is_named_with_the_run_that_limits_it()
    {
        var (answers, _) = Solve(Simple.Replace("wire: 4 AWG, length: 17 ft", "wire: 14 AWG, length: 40 ft", StringComparison.Ordinal));
        var full = answers.State(SystemState.FullOutput);
        Assert.False(full.IsSolved);
        var starved = Assert.Single(full.Starved);
        Assert.Equal("amp", starved.Gear.Id);
        Assert.Equal("P1", starved.LimitingRun);
        Assert.True(starved.Most < starved.Wanted);
        Assert.True(answers.State(SystemState.EngineOff).IsSolved);
    }

    [Fact]
    public void A_dead_short_at_the_far_end_is_what_Ohm_says()
    {
        // As worked example FA-01: E / (battery + wire + return). The wire is as warm as at full output.
        var (answers, _) = Solve(Simple);
        var fault = answers.Faults.Single(f => f.Conductor.Id == "P1-2");
        var wire = answers.Conductors.Where(c => c.Conductor.RunId == "P1").Sum(c => c.Resistance.Value);
        Assert.Equal(12.6 / (0.008 + wire + (0.058 / 100) + 0.001), fault.Far.Value, 0.01 * fault.Far.Value);
        Assert.Equal("P1.fuse", fault.Device!.Id);
        Assert.Equal(fault.Far.Value, fault.DeviceAmpsAtFar.Value, 1e-6 * fault.Far.Value);
        Assert.True(fault.Near > fault.Far);
        Assert.Equal(2000, fault.Breaking!.Value.Value);

        // IEC 60364-5-54: k²S² from 80 C to 160 C, k = 109 A·√s/mm².
        var k = Math.Sqrt(fault.Withstand) / fault.Conductor.Wire.Size.Area.Value;
        Assert.Equal(Math.Sqrt(0.00345 * 254.5 / 17.241e-6 * Math.Log((234.5 + 160) / (234.5 + 80))), k, 1e-9 * k);
        Assert.Equal(
            fault.DeviceAmpsAtFar.Value * fault.DeviceAmpsAtFar.Value * fault.OpensWithin!.Value.Value,
            fault.LetThrough!.Value,
            1e-6 * fault.LetThrough!.Value);

        // Before the fuse nothing opens.
        Assert.Null(answers.Faults.Single(f => f.Conductor.Id == "P1-1").Device);
    }

    [Fact]
    public void Two_batteries_part_when_the_isolator_opens()
    {
        var (answers, _) = Solve("""
            gear:
              main: { is: battery, zone: cabin, capacity: 60 Ah, rest: 12.4 V }
              second: { is: battery, zone: cabin, capacity: 90 Ah, rest: 12.8 V }
              isolator: { is: isolator, zone: cabin, closed: [full output, music, idle] }
              fridge: { is: fridge, zone: cabin, power: 60 W, always-live: true }
              bolt: { is: chassis point, zone: cabin, surface: bare metal }
            runs:
              P1: { from: main.+, to: isolator.main, wire: 4 AWG, length: 5 ft, fuse: { rating: 80 A, at: 6 in } }
              P2: { from: second.+, to: isolator.second, wire: 4 AWG, length: 3 ft, fuse: { rating: 80 A, at: 6 in } }
              P3: { from: second.+, to: fridge.+, wire: 12 AWG, length: 6 ft, fuse: { rating: 15 A, at: 6 in } }
              G1: { from: fridge.-, to: second.-, wire: 12 AWG, length: 6 ft }
              G2: { from: second.-, to: bolt, wire: 4 AWG, length: 12 in }
            """);
        var off = answers.State(SystemState.EngineOff);
        Assert.Equal(0, off.Sources.Single(s => s.Id == "main").Amps.Value, 1e-9);
        Assert.Equal(off.Loads[0].Amps.Value, off.Sources.Single(s => s.Id == "second").Amps.Value, 1e-6);
        var running = answers.State(SystemState.Music);
        Assert.True(running.Sources.Single(s => s.Id == "second").Amps.Value < 0, "it is charged through the isolator");

        // A fridge that stays live draws in standby too.
        Assert.True(answers.State(SystemState.Standby).Loads[0].Amps.Value > 4);
    }

    private static (ElectricalResults Answers, Wiring Wiring) Solve(string fragment)
    {
        var read = SpecReader.Read(Example.File(fragment), new FilesInMemory([]));
        var wired = read.Then(spec => WiringResolver.Resolve(spec, SizeChoices.None));
        Assert.Empty(wired.Findings.Select(f => $"{f.At}: {f.Rule}: {f.Message}"));
        return (ElectricalSolver.Solve(wired.Value), wired.Value);
    }
}
