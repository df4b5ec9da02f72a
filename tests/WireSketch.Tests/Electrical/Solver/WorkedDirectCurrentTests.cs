using WireSketch.Electrical.Solver;

namespace WireSketch.Tests.Electrical.Solver;

public sealed class WorkedDirectCurrentTests
{
    [Fact]
    public void One()
    {
        var c = new DcCircuit(2);
        c.Source(1, 0, 12.6, 0.02);
        c.Power(1, 0, 1984.5);
        var a = DcSolver.Solve(c);
        Assert.IsType<DcAnswer.Found>(a);
        Assert.Equal(6.3, a.Volts[1], 6.3e-6);
    }

    [Fact]
    public void Two()
    {
        var c = new DcCircuit(2);
        c.Source(1, 0, 12.6, 0.02);
        c.Power(1, 0, 2000);
        var a = Assert.IsType<DcAnswer.Starved>(DcSolver.Solve(c));
        Assert.Equal(1984.5 / 2000, a.Scale, 1e-8);
    }
}
