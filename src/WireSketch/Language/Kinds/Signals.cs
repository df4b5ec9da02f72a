using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A group of channels that a device puts out or takes in.</summary>
public sealed record ChannelGroup
{
    public required Written<string> Name { get; init; }

    /// <summary>line or speaker.</summary>
    public string Level { get; init; } = "line";

    public int Channels { get; init; } = 2;

    public Written<Volts>? Maximum { get; init; }

    /// <summary>Lowest frequency at which it still gives its full level.</summary>
    public Written<Hertz>? Lowest { get; init; }

    public ChannelSettings Settings { get; init; } = ChannelSettings.None;

    internal TerminalShape Shape(TerminalFlow flow) =>
        Group(Name.Value, Level == "speaker" ? TerminalRole.Speaker : TerminalRole.Line, flow, ChannelNames(Channels));

    internal static ChannelGroup Read(Fields f) => new()
    {
        Name = f.Key,
        Level = f.Word("level", "line or speaker level", ["line", "speaker"], "line")?.Value ?? "line",
        Channels = f.Count("channels", "number of channels: 1 is mono; 2 left, right; 4 fl, fr, rl, rr; others are numbered", "2")?.Value ?? 2,
        Maximum = f.Amount<Volts>("maximum", "highest voltage, rms"),
        Lowest = f.Amount<Hertz>("lowest", "lowest frequency that it carries"),
        Settings = f.Map("settings", "what the installer sets on it", ChannelSettings.Read) ?? ChannelSettings.None,
    };
}

/// <summary>What the installer sets on a device or one of its channels.</summary>
public sealed record ChannelSettings
{
    public static ChannelSettings None { get; } = new();

    public Written<Hertz>? HighPass { get; init; }

    public Written<Hertz>? LowPass { get; init; }

    public Written<Hertz>? Subsonic { get; init; }

    /// <summary>As the installer would note it: volts of sensitivity, decibels, or a mark on the dial.</summary>
    public Written<string>? Gain { get; init; }

    /// <summary>Such as <c>6 dB at 45 Hz</c>.</summary>
    public Written<string>? Boost { get; init; }

    /// <summary>How much the boost lifts.</summary>
    public Decibels? BoostBy { get; init; }

    /// <summary>The frequency at which it lifts; null if it is not written.</summary>
    public Hertz? BoostAt { get; init; }

    public Written<string>? Polarity { get; init; }

    public Written<Seconds>? Delay { get; init; }

    /// <summary>remote, dc offset, signal, accessory or always.</summary>
    public Written<string>? Wake { get; init; }

    /// <summary>on or off, as printed on the device.</summary>
    public Written<string>? InputLoad { get; init; }

    internal static ChannelSettings Read(Fields f)
    {
        var boost = f.Text("boost", "bass boost, such as 6 dB at 45 Hz");
        var settings = ReadFacts(f) with { Boost = boost };
        if (boost is not { } words)
        {
            return settings;
        }

        var halves = words.Value.Split(" at ", 2);
        Hertz corner = default;
        if (Quantity.TryRead<Decibels>(halves[0], out var by, out _) && (halves.Length == 1 || Quantity.TryRead(halves[1], out corner, out _)))
        {
            return settings with { BoostBy = by, BoostAt = halves.Length == 1 ? null : corner };
        }

        f.Report(new("spec/unit", Diagnostics.Severity.Error, $"\"{words.Value}\" is no boost: a level in dB, and the frequency in Hz at which it lifts", words.At) { Help = "write boost: 6 dB at 45 Hz" });
        return settings;
    }

    private static ChannelSettings ReadFacts(Fields f) => new()
    {
        HighPass = f.Amount<Hertz>("high-pass", "corner of the high-pass filter"),
        LowPass = f.Amount<Hertz>("low-pass", "corner of the low-pass filter"),
        Subsonic = f.Amount<Hertz>("subsonic", "corner of the subsonic filter"),
        Gain = f.Text("gain", "where the gain stands"),
        Polarity = f.Word("polarity", "polarity switch", ["normal", "reversed"], "normal"),
        Delay = f.Amount<Seconds>("delay", "time delay", zero: true),
        Wake = f.Word("wake", "what wakes it, as its switch is set", WakeWords, "remote"),
        InputLoad = f.Word("input-load", "switch that puts a load on the source, as printed on the device", ["on", "off"], "off"),
    };

    internal static ImmutableArray<string> WakeWords { get; } = ["remote", "dc offset", "signal", "accessory", "always"];
}

/// <summary>What a device takes from the supply.</summary>
public sealed record SupplyProperties
{
    public static SupplyProperties None { get; } = new();

    /// <summary>The device's own fuses, in all.</summary>
    public Written<Amps>? Fuse { get; init; }

    public Written<Share>? Efficiency { get; init; }

    /// <summary>Draw at full output, if the maker states it.</summary>
    public Written<Amps>? Current { get; init; }

    /// <summary>Thickest and thinnest cable its terminals take.</summary>
    public Written<Range<WireSize>>? Fits { get; init; }

    internal static SupplyProperties Read(Fields f) => new()
    {
        Fuse = f.Amount<Amps>("fuse", "its own fuses, in all"),
        Efficiency = f.Amount<Share>("efficiency", "output over input at full output", "65 %, or 80 % for class D (common practice)"),
        Current = f.Amount<Amps>("current", "draw at full output, if stated"),
        Fits = f.SizeRange("fits", "the cable its supply terminals take"),
    };
}

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

    public ImmutableArray<Written<string>> WakesOn { get; init; } = [];

    public ChannelSettings Settings { get; init; } = ChannelSettings.None;

    internal static Processor Read(Fields f) => new()
    {
        Name = f.Key,
        Inputs = f.Each("inputs", "its groups of input channels; a single one is usually named in", ChannelGroup.Read),
        Outputs = f.Each("outputs", "its groups of output channels", ChannelGroup.Read),
        Supply = f.Map("supply", "what it takes", SupplyProperties.Read) ?? SupplyProperties.None,
        Standby = f.Amount<Amps>("standby", "draw while asleep", zero: true),
        RemoteLimit = f.Amount<Amps>("remote-limit", "the most that its remote output supplies", "0.5 A (common practice)"),
        WakesOn = f.Words("wakes-on", "what can wake it", ChannelSettings.WakeWords),
        Settings = f.Map("settings", "what the installer sets on it", ChannelSettings.Read) ?? ChannelSettings.None,
    };
}

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

    /// <summary>What of the source reaches the next device, and the reverse: dc offset, load.</summary>
    public ImmutableArray<Written<string>> Passes { get; init; } = [];

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
        Passes = f.Words("passes", "what of the source reaches through it", ["dc offset", "load"]),
        Current = f.Amount<Amps>("current", "draw, if it is powered", zero: true),
    };
}

/// <summary>A resistor that loads a source.</summary>
public sealed record LoadResistor : Gear
{
    public override string Kind => "load resistor";

    public override ImmutableArray<TerminalShape> Terminals => Channels == 2
        ? [Pair("left", TerminalRole.Speaker, TerminalFlow.In), Pair("right", TerminalRole.Speaker, TerminalFlow.In)]
        : [Node("1", TerminalRole.Speaker, TerminalFlow.In), Node("2", TerminalRole.Speaker, TerminalFlow.In)];

    public int Channels { get; init; } = 1;

    /// <summary>The pair or group it lies across, where no runs are written for it.</summary>
    public Written<string>? Across { get; init; }

    public Written<Ohms>? Resistance { get; init; }

    public Written<Watts>? Handles { get; init; }

    internal static LoadResistor Read(Fields f)
    {
        f.Require("resistance");
        return ReadFacts(f);
    }

    private static LoadResistor ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Channels = f.Count("channels", "one resistor, or a pair for left and right", "1", most: 2)?.Value ?? 1,
        Across = f.Text("across", "the pair or group it lies across, instead of runs"),
        Resistance = f.Amount<Ohms>("resistance", "its resistance"),
        Handles = f.Amount<Watts>("handles", "its power rating"),
    };
}

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
