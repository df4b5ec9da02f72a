using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A relay with standard terminal numbers (DIN 72552).</summary>
public sealed record Relay : Gear
{
    public override string Kind => "relay";

    protected override bool ComesCovered => true;

    public override ImmutableArray<TerminalShape> Terminals { get; } =
    [
        Node("30", TerminalRole.Supply, TerminalFlow.In), Node("87", TerminalRole.Supply, TerminalFlow.Out), Node("87a", TerminalRole.Supply, TerminalFlow.Out),
        Node("85", TerminalRole.Ground), Node("86", TerminalRole.Control, TerminalFlow.In),
    ];

    public Written<string>? Coil { get; init; }

    public Written<Amps>? CoilCurrent { get; init; }

    public Written<Ohms>? CoilResistance { get; init; }

    public Written<Amps>? Contact { get; init; }

    public bool Diode { get; init; }

    internal static Relay Read(Fields f)
    {
        var coil = f.Text("coil", "coil current or resistance", "0.15 A (common practice)");
        Written<Amps>? amps = null;
        Written<Ohms>? ohms = null;
        if (coil is { } words)
        {
            if (Quantity.TryRead<Amps>(words.Value, out var a, out _))
            {
                amps = new(a, words.Words, words.At);
            }
            else if (Quantity.TryRead<Ohms>(words.Value, out var o, out _))
            {
                ohms = new(o, words.Words, words.At);
            }
            else
            {
                f.Report(new("spec/value", Diagnostics.Severity.Error, $"\"{words.Value}\" is neither a current nor a resistance: a relay's coil is written as 0.15 A or 85 ohm", words.At));
            }
        }

        return new()
        {
            Name = f.Key,
            Coil = coil,
            CoilCurrent = amps,
            CoilResistance = ohms,
            Contact = f.Amount<Amps>("contact", "what its contact carries"),
            Diode = f.Flag("diode", "has a diode across its coil, so 86 must be positive", "false")?.Value ?? false,
        };
    }
}
