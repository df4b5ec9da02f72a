using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A signal processor.</summary>
public sealed record Processor : Gear
{
    public override string Kind => "processor";

    public override ImmutableArray<TerminalShape> Terminals =>
    [
        Node("+", TerminalRole.Supply, TerminalFlow.In), Node("-", TerminalRole.Ground), Node("remote-in", TerminalRole.Control, TerminalFlow.In),
        Node("remote-out", TerminalRole.Control, TerminalFlow.Out), .. Inputs.Select(o => o.Shape(TerminalFlow.In)), .. Outputs.Select(o => o.Shape(TerminalFlow.Out)),
    ];

    public ImmutableArray<ChannelGroup> Inputs { get; init; } = [];

    public ImmutableArray<ChannelGroup> Outputs { get; init; } = [];

    public SupplyProperties Supply { get; init; } = SupplyProperties.None;

    public Written<Amps>? Standby { get; init; }

    public Written<Amps>? RemoteLimit { get; init; }

    public ImmutableArray<Written<WakeMode>> WakesOn { get; init; } = [];

    public ChannelSettings Settings { get; init; } = ChannelSettings.None;

    internal static Processor Read(Fields f) => new()
    {
        Name = f.Key,
        Inputs = f.Each("inputs", "its groups of input channels; a single one is usually named in", ChannelGroup.Read),
        Outputs = f.Each("outputs", "its groups of output channels", ChannelGroup.Read),
        Supply = f.Map("supply", "what it takes", SupplyProperties.Read) ?? SupplyProperties.None,
        Standby = f.Amount<Amps>("standby", "draw while asleep", zero: true),
        RemoteLimit = f.Amount<Amps>("remote-limit", "the most that its remote output supplies", "0.5 A (common practice)"),
        WakesOn = f.Choices("wakes-on", "what can wake it", WakeModes.Words),
        Settings = f.Map("settings", "what the installer sets on it", ChannelSettings.Read) ?? ChannelSettings.None,
    };
}
