using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>Turns speaker level into line level.</summary>
public sealed record LevelAdapter : Gear
{
    public override string Kind => "level adapter";

    public override ImmutableArray<TerminalShape> Terminals =>
    [
        Group("in", TerminalRole.Speaker, TerminalFlow.In, ChannelNames(Channels)), Group("out", TerminalRole.Line, TerminalFlow.Out, ChannelNames(Channels)),
        Node("+", TerminalRole.Supply, TerminalFlow.In), Node("-", TerminalRole.Ground), Node("remote-out", TerminalRole.Control, TerminalFlow.Out),
    ];

    public int Channels { get; init; } = 2;

    /// <summary>Output voltage over input voltage.</summary>
    public Written<double>? Ratio { get; init; }

    public Written<Volts>? Output { get; init; }

    /// <summary>What each of its inputs presents to the source.</summary>
    public Written<Ohms>? Load { get; init; }

    /// <summary>Highest voltage its inputs take.</summary>
    public Written<Volts>? Maximum { get; init; }

    /// <summary>What of the source reaches the next device, and the reverse.</summary>
    public ImmutableArray<Written<AdapterPass>> Passes { get; init; } = [];

    public Written<Amps>? Current { get; init; }

    internal static LevelAdapter Read(Fields f)
    {
        f.Choose(needed: false, "ratio", "output");
        return ReadFacts(f);
    }

    private static LevelAdapter ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Channels = f.Count("channels", "number of channels", "2")?.Value ?? 2,
        Ratio = f.Number("ratio", "output voltage over input voltage"),
        Output = f.Amount<Volts>("output", "highest output voltage"),
        Load = f.Amount<Ohms>("load", "the load that each input presents to the source"),
        Maximum = f.Amount<Volts>("maximum", "highest voltage its inputs take"),
        Passes = f.Choices("passes", "what of the source reaches through it", AdapterPasses.Words),
        Current = f.Amount<Amps>("current", "draw, if it is powered", zero: true),
    };
}

/// <summary>What of the source reaches through a level adapter.</summary>
public enum AdapterPass
{
    DcOffset,
    Load,
}

/// <summary>The words of <see cref="AdapterPass"/>.</summary>
public static class AdapterPasses
{
    public static ChoiceWords<AdapterPass> Words { get; } = new((AdapterPass.DcOffset, "dc offset"), (AdapterPass.Load, "load"));
}
