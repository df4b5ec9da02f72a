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
            Assert.True(state.IsSolved, $"{name}: {state.State}");
            if (state.State == SystemState.FullOutput)
            {
                Assert.All(state.Loads, l => Assert.InRange(l.Between.Value, 10, 15));
            }
        }
    }

    private static Answers Solve(string name)
    {
        var read = SpecReader.Read(ShippedSpecs.Open(name), ShippedSpecs.Files);
        var wired = WiringResolver.Resolve(read.Value, SizeChoices.None);
        return Engine.Solve(wired.Value);
    }
}
