using System.Collections.Immutable;
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
        Series = (f.Choice("place", "in series with the output or across it", ComponentPlaces.Words, "series")?.Value
            ?? ComponentPlace.Series)
            == ComponentPlace.Series,
        Capacitor = f.Amount<Farads>("capacitor", "a capacitor"),
        Inductor = f.Amount<Henries>("inductor", "an inductor"),
        Resistor = f.Amount<Ohms>("resistor", "a resistor; with an inductor, its winding resistance"),
    };
}

/// <summary>A passive crossover.</summary>
public sealed record PassiveCrossover : Gear
{
    public override string Kind => "passive crossover";

    public static TerminalShape In { get; } = Pair("in", TerminalRole.Speaker, TerminalFlow.In);

    /// <summary>The terminals of an output.</summary>
    public static TerminalShape Output(CrossoverOutput output) => Pair(output.Name.Value, TerminalRole.Speaker, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals =>
        [In, .. Outputs.Select(Output)];

    public ImmutableArray<CrossoverOutput> Outputs { get; init; } = [];

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [.. Outputs.Select(o => new CrossoverWay(In, Output(o), o))];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Crossover,
        Family = DeviceFamily.Speaker,
        Form = DrawnForm.Box,
        IsHub = false,
        HasFreeSides = false,
        PlaysSound = false,
        PlugsIn = false,
        Words = Kind,
        PlainWords = Kind,
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = [] };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static PassiveCrossover Read(Fields f)
    {
        f.Require("outputs");
        return new() { Name = f.Key, Outputs = f.Each("outputs", "its outputs, each a band or component values", CrossoverOutput.Read) };
    }
}

/// <summary>Where a component of a crossover sits.</summary>
public enum ComponentPlace
{
    Series,
    Across,
}

/// <summary>The words of <see cref="ComponentPlace"/>.</summary>
public static class ComponentPlaces
{
    public static ChoiceWords<ComponentPlace> Words { get; } = new((ComponentPlace.Series, "series"), (ComponentPlace.Across, "across"));
}
