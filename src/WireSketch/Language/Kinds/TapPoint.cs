using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A point on the vehicle's own wiring where a connection is made.</summary>
public sealed record TapPoint : Gear
{
    public override string Kind => "tap point";

    public override ImmutableArray<TerminalShape> Terminals
    {
        get
        {
            var role = Carries?.Value switch
            {
                TapContent.Constant or TapContent.Accessory => TerminalRole.Supply,
                TapContent.Ground => TerminalRole.Ground,
                TapContent.Speaker => TerminalRole.Speaker,
                TapContent.Line => TerminalRole.Line,
                TapContent.Control => TerminalRole.Control,
                _ => TerminalRole.Any,
            };
            var flow = role == TerminalRole.Ground ? TerminalFlow.Both : TerminalFlow.Out;
            if (role is not (TerminalRole.Speaker or TerminalRole.Line))
            {
                return [Node("", role, flow)];
            }

            return Channels is { Value: > 0 and var n } ? [Group("", role, flow, []) with { Members = [.. ChannelNames(n).Select(m => Pair(m, role, flow))] }] : [Pair("", role, flow)];
        }
    }

    public Written<TapContent>? Carries { get; init; }

    public Written<int>? Channels { get; init; }

    public Written<Amps>? Limit { get; init; }

    public Written<Volts>? Maximum { get; init; }

    public Written<string>? Color { get; init; }

    public Written<string>? Connector { get; init; }

    public Written<string>? Cavity { get; init; }

    internal static TapPoint Read(Fields f) => new()
    {
        Name = f.Key,
        Carries = f.Choice("carries", "what the vehicle's wire carries", TapContents.Words),
        Channels = f.Count("channels", "number of channels, for speaker or line", "1"),
        Limit = f.Amount<Amps>("limit", "the most that may be taken from it"),
        Maximum = f.Amount<Volts>("maximum", "highest signal voltage there, for speaker or line"),
        Color = f.Text("color", "color of the vehicle's wire"),
        Connector = f.Text("connector", "the vehicle's connector"),
        Cavity = f.Text("cavity", "cavity in that connector"),
    };
}

/// <summary>What a wire of the vehicle carries.</summary>
public enum TapContent
{
    Constant,
    Accessory,
    Ground,
    Speaker,
    Line,
    Control,
}

/// <summary>The words of <see cref="TapContent"/>.</summary>
public static class TapContents
{
    public static ChoiceWords<TapContent> Words { get; } = new((TapContent.Constant, "constant"), (TapContent.Accessory, "accessory"), (TapContent.Ground, "ground"), (TapContent.Speaker, "speaker"), (TapContent.Line, "line"), (TapContent.Control, "control"));
}
