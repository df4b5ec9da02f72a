using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>
/// What conductors are made of: resistivity, its change with temperature, and what a short pulse of current heats (IEC 60028, IEC
/// 60364-5-54, ASTM B566).
/// </summary>
public sealed record Metal
{
    private Metal(CsvTable table, string conductor, string resistivity, string alpha, string heat)
    {
        Resistivity = Value(table, conductor, resistivity);
        PulseResistivity = table.Rows.Any(r => r["material"] == heat && r["property"] == "resistivity_adiabatic")
            ? Value(table, heat, "resistivity_adiabatic")
            : Resistivity;
        Alpha = Value(table, alpha, "alpha_20");
        Beta = Value(table, heat, "beta");
        Heat = Value(table, heat, "volumetric_heat_capacity");
    }

    /// <summary>Annealed copper of 100 % IACS.</summary>
    public static Metal Copper { get; } = new(CsvTable.Own("materials"), "copper-annealed", "resistivity", "copper-annealed", "copper");

    /// <summary>
    /// Copper-clad aluminum with 10 % of copper by volume at its guaranteed least conductivity, 62.9 % IACS; temperature and heat as of
    /// aluminum,
    /// of which nine tenths of it consist.
    /// </summary>
    public static Metal CopperCladAluminum { get; } = new(
        CsvTable.Own("materials"), "copper-clad-aluminum-10", "resistivity_max", "aluminum-conductor", "aluminum");

    /// <summary>Aluminum of conductor grade.</summary>
    internal static Metal Aluminum { get; } = new(
        CsvTable.Own("materials"), "aluminum-conductor", "resistivity", "aluminum-conductor", "aluminum");

    /// <summary>Resistivity at 20 C, in ohm·mm²/m.</summary>
    internal double Resistivity { get; }

    /// <summary>The same, as IEC 60364-5-54 rounds it for its factor k.</summary>
    internal double PulseResistivity { get; }

    /// <summary>Temperature coefficient of resistance at 20 C, per kelvin.</summary>
    internal double Alpha { get; }

    /// <summary>Reciprocal of the temperature coefficient at 0 C, in degrees Celsius (IEC 60364-5-54).</summary>
    internal double Beta { get; }

    /// <summary>Volumetric heat capacity at 20 C, in J/(K·mm³).</summary>
    internal double Heat { get; }

    /// <summary>Conductivity as a share of that of copper.</summary>
    public Share ShareOfCopper => new(Copper.Resistivity / Resistivity);

    /// <summary>Resistance of a solid conductor at a temperature: ρ20·L/A·(1 + α·(t − 20)).</summary>
    public Ohms Resistance(SquareMillimeters area, Meters length, Celsius temperature) =>
        new(Resistivity * length.Value / area.Value * (1 + (Alpha * (temperature.Value - 20))));

    /// <summary>
    /// What a short pulse may pass, I²t = k²·S² in A²s, with k² = Qc·(β + 20)/ρ20 · ln((β + final)/(β + initial)): the adiabatic equation
    /// of
    /// IEC 60364-5-54, good for some 5 s.
    /// </summary>
    internal double Withstand(SquareMillimeters area, Celsius initial, Celsius final) => Square(area.Value * K(initial, final));

    /// <summary>The factor k of the adiabatic equation, in A·√s/mm².</summary>
    internal double K(Celsius initial, Celsius final) =>
        Math.Sqrt(Heat * (Beta + 20) / (PulseResistivity * 1e-3) * Exact.Log((Beta + final.Value) / (Beta + initial.Value)));

    private static double Square(double x) => x * x;

    private static double Value(CsvTable table, string material, string property) =>
        table.Rows.Single(r => r["material"] == material && r["property"] == property).Number("value");
}
