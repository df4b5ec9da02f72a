using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A remote level knob.</summary>
public sealed record LevelControl : Gear
{
    public override string Kind => "level control";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("to", TerminalRole.Control, TerminalFlow.Out)];

    /// <summary>The device it is plugged into.</summary>
    public Written<string>? To { get; init; }

    internal static LevelControl Read(Fields f)
    {
        f.Require("to");
        return new() { Name = f.Key, To = f.Text("to", "the device it is plugged into") };
    }
}
