using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A radio or other head unit.</summary>
public sealed record HeadUnit : Gear
{
    public override string Kind => "head unit";

    public override ImmutableArray<TerminalShape> Terminals =>
    [
        Node("battery", TerminalRole.Supply, TerminalFlow.In), Node("accessory", TerminalRole.Control, TerminalFlow.In), Node("-", TerminalRole.Ground),
        Node("remote", TerminalRole.Control, TerminalFlow.Out), .. Outputs.Select(o => o.Shape(TerminalFlow.Out)),
    ];

    public ImmutableArray<ChannelGroup> Outputs { get; init; } = [];

    public Written<Amps>? RemoteLimit { get; init; }

    /// <summary>The source falls silent if it sees less load than this many ohms would be.</summary>
    public Written<Ohms>? MutesWithoutLoad { get; init; }

    /// <summary>Its speaker outputs carry a DC offset while it plays, by which a device can wake.</summary>
    public bool? DcOffset { get; init; }

    public Written<Amps>? Current { get; init; }

    public Written<Amps>? Standby { get; init; }

    internal static HeadUnit Read(Fields f)
    {
        var behavior = f.Map("behavior", "how it behaves as a source", b => new SourceBehavior(
            b.Amount<Ohms>("mutes-without-load", "falls silent unless each channel sees a load of about this"),
            b.Flag("dc-offset", "its speaker outputs carry a DC offset while it plays", "true")?.Value));
        return new()
        {
            Name = f.Key,
            Outputs = f.Each("outputs", "its groups of output channels", ChannelGroup.Read),
            RemoteLimit = f.Amount<Amps>("remote-limit", "the most that its remote output supplies", "0.5 A (common practice)"),
            MutesWithoutLoad = behavior?.Mutes,
            DcOffset = behavior?.Offset,
            Current = f.Amount<Amps>("current", "draw while playing", "5 A (common practice)"),
            Standby = f.Amount<Amps>("standby", "draw while asleep", zero: true),
        };
    }

    private sealed record SourceBehavior(Written<Ohms>? Mutes, bool? Offset);
}
