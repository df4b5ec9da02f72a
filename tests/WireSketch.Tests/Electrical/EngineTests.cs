using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Topology;

namespace WireSketch.Tests.Electrical;

public sealed class EngineTests
{
    public static TheoryData<string> Specs => [.. ShippedSpecs.Good];

    [Theory, MemberData(nameof(Specs))]
    public void Shipped_specs_have_an_operating_point_in_every_state(string name)
    {
        var answers = Solve(name);
        foreach (var state in answers.States)
        {
            TestContext.Current.TestOutputHelper?.WriteLine($"{state.State}: " + string.Join("; ", state.Loads.Select(l => $"{l.Path.Gear.Id} {l.Between} {l.Amps} drop {l.Drop}")));
            TestContext.Current.TestOutputHelper?.WriteLine("   " + string.Join("; ", state.Sources.Select(s => $"{s.Id} {s.Volts} {s.Amps}{(s.AtItsLimit ? " limit" : "")}")));
            Assert.True(state.IsSolved, $"{name}: {state.State}");
            if (state.State == SystemState.FullOutput)
            {
                Assert.All(state.Loads, l => Assert.InRange(l.Between.Value, 10, 15));
            }
        }

        foreach (var c in answers.Channels)
        {
            TestContext.Current.TestOutputHelper?.WriteLine($"{c.Id} {c.BridgedWith} {c.Fault} nominal {c.Nominal} loaded {c.Loaded} {c.Power} {c.Volts} target {c.TargetVolts} loss {c.WireLoss}: " + string.Join(", ", c.Coils.Select(x => $"{x.Speaker.Id}.{x.Coil} {x.Power} {x.IsReversed} {x.IsOpen}")));
        }

        foreach (var f in answers.Faults)
        {
            TestContext.Current.TestOutputHelper?.WriteLine($"{f.Conductor.Id} near {f.Near} far {f.Far} device {f.Device?.Id} far {f.DeviceAmpsAtFar} near {f.DeviceAmpsAtNear} opens {f.OpensWithin} let {f.LetThrough:g4} withstand {f.Withstand:g4} up {f.UpstreamOpensFirst?.Id}");
        }

        TestContext.Current.TestOutputHelper?.WriteLine(answers.Energy.ToString());
    }

    private static Answers Solve(string name)
    {
        var read = SpecReader.Read(ShippedSpecs.Open(name), ShippedSpecs.Files);
        var wired = WiringResolver.Resolve(read.Value, SizeChoices.None);
        return Engine.Solve(wired.Value);
    }
}
