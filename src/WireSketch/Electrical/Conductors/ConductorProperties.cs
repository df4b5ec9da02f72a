using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.Conductors;

/// <summary>Resistance, temperature and allowable current of conductors.</summary>
internal sealed class ConductorProperties(Wiring wiring)
{
    /// <summary>Least conductivity of copper-clad aluminum, 10 % copper by volume, as a share of copper's (ASTM B566).</summary>
    public static readonly double CladConductivity = Metal.CopperCladAluminum.ShareOfCopper.Value;

    /// <summary>
    /// How much longer the strands of a stranded conductor are than the conductor (NEC chapter 9 Table 8: 1.018 to 1.025).
    /// </summary>
    public const double Lay = 1.02;

    /// <summary>Beyond so many times the table's current no temperature is reckoned: a fuse has opened by then.</summary>
    public const double MostLoad = 3;

    private readonly Dictionary<string, Zone> zones = wiring.Spec.Zones.DistinctBy(z => z.Id)
        .ToDictionary(z => z.Id, StringComparer.Ordinal);

    public static Metal MetalOf(Conductor c) => c.Wire.Material == ConductorMaterial.Clad ? Metal.CopperCladAluminum : Metal.Copper;

    /// <summary>Resistance of the wire itself at 20 C: resistivity times length over area, times the lay of its strands.</summary>
    public static Ohms At20(Conductor c)
    {
        return MetalOf(c).Resistance(c.Wire.Size.Area, c.Length, new(20)) * (c.Wire.Strands == Stranding.Solid ? 1 : Lay);
    }

    /// <summary>Resistance at a temperature, with its two terminations; a jumper without length has one.</summary>
    public static Ohms At(Conductor c, Celsius temperature)
    {
        return (At20(c) * (1 + (MetalOf(c).Alpha * (temperature.Value - 20))))
            + (c.Wire.Termination * (c.IsJumper && c.Length.Value == 0 ? 1 : 2));
    }

    /// <summary>Ambient temperature where the conductor lies.</summary>
    public Celsius AmbientOf(Conductor c) =>
        c.ZoneId is { } id && zones.TryGetValue(id, out var zone) ? zone.AmbientOrDefault : AmpacityTable.Ambient;

    /// <summary>
    /// Working temperature: ambient plus own heating, which grows with the square of the current and brings the conductor from
    /// 30 C to what its insulation is rated for at the table's current.
    /// </summary>
    public Celsius Heated(Conductor c, Amps current)
    {
        var ambient = AmbientOf(c);
        if (AmpacityTable.Of(c.Wire.Size, c.Wire.Insulation) is not { } table)
        {
            return ambient;
        }

        var load = Math.Min(MostLoad, Math.Abs(current.Value) / table.Value);
        return ambient.Warmer(Math.Max(0, c.Wire.Insulation.Value - AmpacityTable.Ambient.Value) * load * load);
    }

    /// <summary>The facts of a conductor that carries so much at full output.</summary>
    public ConductorResult Answer(Conductor c, Amps current)
    {
        var temperature = Heated(c, current);
        var table = AmpacityTable.Of(c.Wire.Size, c.Wire.Insulation);
        var (factor, why) = Correction(c);
        return new(
            c,
            At20(c),
            At(c, temperature),
            temperature,
            table is { } t ? t * factor.Value : null,
            table,
            factor,
            $"{AmpacityTable.Source}{why}");
    }

    private (Share Factor, string Why) Correction(Conductor c)
    {
        // Clad wire carries what heats it as much as copper of its size would be heated.
        var clad = c.Wire.Material == ConductorMaterial.Clad ? Math.Sqrt(CladConductivity) : 1;
        var cladWords = clad < 1 ? ", copper-clad aluminum" : "";
        if (c.ZoneId is { } id && zones.TryGetValue(id, out var zone) && zone.IsEngineBay)
        {
            var engine = AmpacityTable.EngineSpaceFactor(c.Wire.Insulation);
            return (engine * clad, $", engine space × {Quantity.Digits(engine.Value, 2)}{cladWords}");
        }

        var ambient = AmbientOf(c).Value;
        if (ambient <= AmpacityTable.Ambient.Value)
        {
            return (new(clad), cladWords);
        }

        // The form of NEC 310.15: the root of the temperature rise that is left.
        var left = Math.Sqrt(Math.Max(0, c.Wire.Insulation.Value - ambient) / (c.Wire.Insulation.Value - AmpacityTable.Ambient.Value));
        return (new(left * clad), $", {Quantity.Digits(ambient, 3)} C ambient × {Quantity.Digits(left, 2)}{cladWords}");
    }
}
