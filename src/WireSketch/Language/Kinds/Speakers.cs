using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>One output of a passive crossover.</summary>
public sealed record CrossoverOutput
{
    public required Written<string> Name { get; init; }

    /// <summary>The band it passes, as an ideal filter.</summary>
    public Written<Range<Hertz>>? Band { get; init; }

    public Written<Hertz>? HighPass { get; init; }

    public Written<Hertz>? LowPass { get; init; }

    /// <summary>Components from input to output, each in series or in parallel, in order.</summary>
    public ImmutableArray<CrossoverPart> Parts { get; init; } = [];

    internal static CrossoverOutput Read(Fields f) => new()
    {
        Name = f.Key,
        Band = f.AmountRange<Hertz>("band", "the band it passes, such as 80 Hz to 2500 Hz"),
        HighPass = f.Amount<Hertz>("high-pass", "passes what is above"),
        LowPass = f.Amount<Hertz>("low-pass", "passes what is below"),
        Parts = f.List("parts", "components from input to output, in order", CrossoverPart.Read),
    };
}

/// <summary>A component of a passive crossover: a capacitor, a coil or a resistor.</summary>
public sealed record CrossoverPart
{
    /// <summary>In series with the output; otherwise across it.</summary>
    public bool Series { get; init; } = true;

    public Written<Farads>? Capacitor { get; init; }

    public Written<Henries>? Inductor { get; init; }

    public Written<Ohms>? Resistor { get; init; }

    internal static CrossoverPart Read(Fields f) => new()
    {
        Series = (f.Word("place", "in series with the output or across it", ["series", "across"], "series")?.Value ?? "series") == "series",
        Capacitor = f.Amount<Farads>("capacitor", "a capacitor"),
        Inductor = f.Amount<Henries>("inductor", "an inductor"),
        Resistor = f.Amount<Ohms>("resistor", "a resistor; with an inductor, its winding resistance"),
    };
}

/// <summary>A passive crossover.</summary>
public sealed record PassiveCrossover : Gear
{
    public override string Kind => "passive crossover";

    public override ImmutableArray<TerminalShape> Terminals =>
        [Pair("in", TerminalRole.Speaker, TerminalFlow.In), .. Outputs.Select(o => Pair(o.Name.Value, TerminalRole.Speaker, TerminalFlow.Out))];

    public ImmutableArray<CrossoverOutput> Outputs { get; init; } = [];

    internal static PassiveCrossover Read(Fields f)
    {
        f.Require("outputs");
        return new() { Name = f.Key, Outputs = f.Each("outputs", "its outputs, each a band or component values", CrossoverOutput.Read) };
    }
}

/// <summary>A speaker or subwoofer: one or more coils on one cone.</summary>
public sealed record Speaker : Gear
{
    public override string Kind => Subwoofer ? "subwoofer" : "speaker";

    public override ImmutableArray<TerminalShape> Terminals
    {
        get
        {
            var n = CoilCount;
            var coils = Enumerable.Range(1, n).Select(k => "coil." + k.ToString(CultureInfo.InvariantCulture)).ToArray();
            var all = new TerminalShape("coils", TerminalForm.Group, TerminalRole.Speaker, TerminalFlow.In, [.. coils.Select(c => Pair(c, TerminalRole.Speaker, TerminalFlow.In))]);
            return [.. all.Members, all];
        }
    }

    public bool Subwoofer { get; init; }

    public Written<Multiple<Ohms>>? Coils { get; init; }

    public int CoilCount => Math.Clamp(Coils?.Value.Count ?? 1, 1, 64);

    /// <summary>Nominal impedance of one coil.</summary>
    public Ohms CoilImpedance => Coils?.Value.Each ?? new Ohms(4);

    public Written<Ohms>? DcResistance { get; init; }

    /// <summary>Power for the driver, shared by its coils.</summary>
    public Written<Watts>? Handles { get; init; }

    /// <summary>tweeter, midrange, midbass, woofer or full range.</summary>
    public Written<string>? Band { get; init; }

    /// <summary>sealed, vented, bandpass or free air.</summary>
    public Written<string>? EnclosureType { get; init; }

    public Written<Hertz>? Tuned { get; init; }

    internal static Speaker Read(Fields f, bool subwoofer)
    {
        var enclosure = f.Map("enclosure", "the box it is in", e => new Enclosure(
            e.Word("type", "kind of box", ["sealed", "vented", "bandpass", "free air"]), e.Amount<Hertz>("tuned", "tuning of a vented or bandpass box")));
        return new()
        {
            Name = f.Key,
            Subwoofer = subwoofer,
            Coils = f.AmountMultiple<Ohms>("coils", "its voice coils, nominal, such as 2 x 4 ohm; one coil of 4 ohm if absent"),
            DcResistance = f.Amount<Ohms>("dc-resistance", "resistance of one coil as a meter shows it"),
            Handles = f.Amount<Watts>("handles", "continuous power for the driver, shared by its coils"),
            Band = f.Word("band", "what it plays", ["tweeter", "midrange", "midbass", "woofer", "full range"]),
            EnclosureType = enclosure?.Type,
            Tuned = enclosure?.Tuned,
        };
    }

    private sealed record Enclosure(Written<string>? Type, Written<Hertz>? Tuned);
}
