using WireSketch.Electrical.Solver;

namespace WireSketch.Tests.Electrical.Solver;

/// <summary>
/// A battery takes charge behind a larger resistance than it gives behind. Loads that pull it from the one side to the other are
/// compared with the closed form of a constant power behind a resistance, V = (E + √(E² − 4PR)) / 2 (Kirchhoff and Ohm).
/// </summary>
public sealed class BatteryKinkTests
{
    private const double E = 12.6;
    private const double Gives = 0.016;
    private const double Takes = 0.15;
    private const double Wire = 0.004;

    [Theory]
    [InlineData(10)]
    [InlineData(250)]
    [InlineData(300)]
    [InlineData(1000)]
    [InlineData(1980)]
    public void A_battery_at_rest_supplies_what_its_giving_side_can(double watts)
    {
        var circuit = new DcCircuit(3);
        circuit.Battery(1, 0, E, Gives, Takes);
        circuit.Resistor(1, 2, Wire);
        circuit.Power(2, 0, watts);
        var found = Assert.IsType<DcSolution.Found>(DcSolver.Solve(circuit));
        Assert.Equal((E + Math.Sqrt((E * E) - (4 * watts * (Gives + Wire)))) / 2, found.Volts[2], 1e-9);
    }

    [Fact]
    public void Beyond_the_highest_power_there_is_no_answer()
    {
        var circuit = new DcCircuit(3);
        circuit.Battery(1, 0, E, Gives, Takes);
        circuit.Resistor(1, 2, Wire);
        circuit.Power(2, 0, (E * E / (4 * (Gives + Wire))) + 1);
        Assert.IsType<DcSolution.Starved>(DcSolver.Solve(circuit));
    }

    /// <summary>The alternator gives all it has; the battery gives the rest, P/V − I at V = E − (P/V − I)·R: a quadratic in V.</summary>
    [Theory]
    [InlineData(1100)]
    [InlineData(1500)]
    [InlineData(2500)]
    public void A_load_beyond_the_alternator_pulls_the_battery_to_its_giving_side(double watts)
    {
        const double limit = 60;
        var circuit = new DcCircuit(2);
        circuit.Battery(1, 0, E, Gives, Takes);
        circuit.Regulated(1, 0, 14.2, 0.001, limit);
        circuit.Power(1, 0, watts);
        var found = Assert.IsType<DcSolution.Found>(DcSolver.Solve(circuit));
        var open = E + (limit * Gives);
        Assert.Equal((open + Math.Sqrt((open * open) - (4 * watts * Gives))) / 2, found.Volts[1], 1e-6);
    }
}
