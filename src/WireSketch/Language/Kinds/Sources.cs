using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A battery.</summary>
public sealed record Battery : Gear
{
    public override string Kind => "battery";

    protected override bool ComesCovered => true;

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.Out), Node("-", TerminalRole.Ground)];

    public Written<AmpHours>? Capacity { get; init; }

    public Written<Ohms>? Internal { get; init; }

    /// <summary>flooded, AGM, gel or lithium.</summary>
    public Written<string>? Chemistry { get; init; }

    public Written<Volts>? Rest { get; init; }

    public Written<string>? Post { get; init; }

    internal static Battery Read(Fields f) => new()
    {
        Name = f.Key,
        Capacity = f.Amount<AmpHours>("capacity", "capacity at the 20 h rate", "60 Ah (common practice)"),
        Internal = f.Amount<Ohms>("internal", "internal resistance", "8 mohm for 60 Ah, in inverse proportion to the capacity (common practice)"),
        Chemistry = f.Word("chemistry", "kind of cells", ["flooded", "AGM", "gel", "lithium"], "flooded"),
        Rest = f.Amount<Volts>("rest", "volts at rest, charged", "12.6 V; AGM and gel 12.8 V; lithium 13.2 V (common practice)"),
        Post = f.Text("post", "kind or size of its posts, for the terminals to buy"),
    };
}

/// <summary>An alternator: a regulated source with a current limit.</summary>
public sealed record Alternator : Gear
{
    public override string Kind => "alternator";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.Out), Node("-", TerminalRole.Ground)];

    public Written<Amps>? Output { get; init; }

    public Written<Amps>? Idle { get; init; }

    public Written<Volts>? Regulated { get; init; }

    internal static Alternator Read(Fields f) => new()
    {
        Name = f.Key,
        Output = f.Amount<Amps>("output", "output when hot, at speed", "job.vehicle.alternator"),
        Idle = f.Amount<Amps>("idle", "output with the engine idling", "half of its output (common practice)"),
        Regulated = f.Amount<Volts>("regulated", "the voltage it regulates to", "job.vehicle.running, or 14.2 V"),
    };
}

/// <summary>Solar, shore or DC-DC charger.</summary>
public sealed record GeneralSource : Gear
{
    public override string Kind => "general source";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.Out), Node("-", TerminalRole.Ground)];

    public Written<Volts>? Voltage { get; init; }

    public Written<Amps>? Current { get; init; }

    public Written<Share>? Duty { get; init; }

    public Written<Seconds>? Hours { get; init; }

    internal static GeneralSource Read(Fields f)
    {
        f.Choose(needed: false, "duty", "hours");
        return ReadFacts(f);
    }

    private static GeneralSource ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Voltage = f.Amount<Volts>("voltage", "the voltage it regulates to", "14.2 V"),
        Current = f.Amount<Amps>("current", "the most it gives"),
        Duty = f.Amount<Share>("duty", "share of the time it gives that", zero: true),
        Hours = f.Amount<Seconds>("hours", "hours a day it gives that", zero: true),
    };
}

/// <summary>A stiffening capacitor.</summary>
public sealed record Capacitor : Gear
{
    public override string Kind => "capacitor";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("+", TerminalRole.Supply, TerminalFlow.In), Node("-", TerminalRole.Ground)];

    public Written<Farads>? Capacity { get; init; }

    public Written<Ohms>? Internal { get; init; }

    internal static Capacitor Read(Fields f) => new()
    {
        Name = f.Key,
        Capacity = f.Amount<Farads>("capacity", "capacitance; stands in the lists, and changes nothing that is computed: no current flows into a charged capacitor"),
        Internal = f.Amount<Ohms>("internal", "series resistance; stands in the lists, and changes nothing that is computed: no current flows into a charged capacitor"),
    };
}

/// <summary>A vehicle circuit that is live when the ignition or accessory switch says so.</summary>
public sealed record IgnitionSource : Gear
{
    public override string Kind => "ignition source";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("", TerminalRole.Supply, TerminalFlow.Out)];

    /// <summary>constant, accessory, ignition or start.</summary>
    public Written<string>? Live { get; init; }

    public Written<Volts>? Voltage { get; init; }

    public Written<Amps>? Limit { get; init; }

    internal static IgnitionSource Read(Fields f) => new()
    {
        Name = f.Key,
        Live = f.Word("live", "when it is live", ["constant", "accessory", "ignition", "start"], "accessory"),
        Voltage = f.Amount<Volts>("voltage", "its voltage", "the battery's"),
        Limit = f.Amount<Amps>("limit", "the most that may be taken from it", "0.5 A for waking (common practice)"),
    };
}

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
                "constant" or "accessory" => TerminalRole.Supply,
                "ground" => TerminalRole.Ground,
                "speaker" => TerminalRole.Speaker,
                "line" => TerminalRole.Line,
                "control" => TerminalRole.Control,
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

    /// <summary>constant, accessory, ground, speaker, line or control.</summary>
    public Written<string>? Carries { get; init; }

    public Written<int>? Channels { get; init; }

    public Written<Amps>? Limit { get; init; }

    public Written<Volts>? Maximum { get; init; }

    public Written<string>? Color { get; init; }

    public Written<string>? Connector { get; init; }

    public Written<string>? Cavity { get; init; }

    internal static TapPoint Read(Fields f) => new()
    {
        Name = f.Key,
        Carries = f.Word("carries", "what the vehicle's wire carries", ["constant", "accessory", "ground", "speaker", "line", "control"]),
        Channels = f.Count("channels", "number of channels, for speaker or line", "1"),
        Limit = f.Amount<Amps>("limit", "the most that may be taken from it"),
        Maximum = f.Amount<Volts>("maximum", "highest signal voltage there, for speaker or line"),
        Color = f.Text("color", "color of the vehicle's wire"),
        Connector = f.Text("connector", "the vehicle's connector"),
        Cavity = f.Text("cavity", "cavity in that connector"),
    };
}
