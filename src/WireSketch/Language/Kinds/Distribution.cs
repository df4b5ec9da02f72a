using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A fuse or circuit breaker that stands by itself.</summary>
public sealed record ProtectiveDevice : Gear
{
    public override string Kind => Breaker ? "breaker" : "fuse";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("in", TerminalRole.Supply, TerminalFlow.In), Node("out", TerminalRole.Supply, TerminalFlow.Out)];

    public bool Breaker { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<string>? Style { get; init; }

    public Written<Amps>? Breaking { get; init; }

    /// <summary>manual or automatic; breakers only.</summary>
    public Written<string>? Reset { get; init; }

    internal static ProtectiveDevice Read(Fields f, bool breaker) => new()
    {
        Name = f.Key,
        Breaker = breaker,
        Rating = f.Amount<Amps>("rating", "rated current"),
        Style = breaker ? null : f.Word("style", "construction of the fuse", FuseStyles.All, "the smallest that comes in that rating"),
        Breaking = f.Amount<Amps>("breaking", "the highest current it can break"),
        Reset = breaker ? f.Word("reset", "how it is reset", ["manual", "automatic"], "manual") : null,
    };
}

/// <summary>The constructions of fuses that the language knows.</summary>
public static class FuseStyles
{
    public static ImmutableArray<string> All { get; } = ["blade mini", "blade", "blade maxi", "strip", "wafer", "cartridge", "class T"];
}

/// <summary>A block of fuses with a common input.</summary>
public sealed record FuseBlock : Gear
{
    public override string Kind => "fuse block";

    public override ImmutableArray<TerminalShape> Terminals =>
    [
        Node("in", TerminalRole.Supply, TerminalFlow.In),
        .. Enumerable.Range(1, Outputs).Select(n => Node("out." + n.ToString(CultureInfo.InvariantCulture), TerminalRole.Supply, TerminalFlow.Out)),
        Node("-", TerminalRole.Ground),
    ];

    public int Outputs { get; init; }

    public ImmutableArray<(Written<int> Key, Written<Amps> Value)> Fuses { get; init; } = [];

    public Written<string>? Style { get; init; }

    public Written<Amps>? Rating { get; init; }

    internal static FuseBlock Read(Fields f)
    {
        f.RequireAny("outputs", "fuses");
        var fuses = f.Numbered<Amps>("fuses", "rating of the fuse at each output");
        var highest = fuses.Select(x => x.Key.Value).DefaultIfEmpty(0).Max();
        var outputs = f.Count("outputs", "number of outputs", "the highest number in fuses");
        if (outputs is { } written && highest > written.Value)
        {
            var beyond = fuses.First(x => x.Key.Value == highest).Key;
            f.Report(new("spec/value", Diagnostics.Severity.Error, $"output {highest} has a fuse, but the block has {written.Value} outputs", beyond.At));
        }

        return new()
        {
            Name = f.Key,
            Outputs = outputs?.Value ?? highest,
            Fuses = fuses,
            Style = f.Word("style", "construction of its fuses", FuseStyles.All, "the smallest that comes in that rating"),
            Rating = f.Amount<Amps>("rating", "what the block carries in all"),
        };
    }
}

/// <summary>A block that divides a cable without fuses.</summary>
public sealed record DistributionBlock : Gear
{
    public override string Kind => "distribution block";

    public override ImmutableArray<TerminalShape> Terminals =>
    [
        Node("in", TerminalRole.Any, TerminalFlow.In),
        .. Enumerable.Range(1, Outputs).Select(n => Node("out." + n.ToString(CultureInfo.InvariantCulture), TerminalRole.Any, TerminalFlow.Out)),
    ];

    public int Outputs { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<Range<WireSize>>? Fits { get; init; }

    internal static DistributionBlock Read(Fields f) => new()
    {
        Name = f.Key,
        Outputs = f.Count("outputs", "number of outputs", "2")?.Value ?? 2,
        Rating = f.Amount<Amps>("rating", "what it carries in all"),
        Fits = f.SizeRange("fits", "the cable it takes"),
    };
}

/// <summary>A bus bar or ground block: one node for any number of runs.</summary>
public sealed record BusBar : Gear
{
    public override string Kind => Ground ? "ground block" : "bus bar";

    public override ImmutableArray<TerminalShape> Terminals => [Node("", Ground ? TerminalRole.Ground : TerminalRole.Any)];

    public bool Ground { get; init; }

    public Written<int>? Studs { get; init; }

    public Written<Amps>? Rating { get; init; }

    internal static BusBar Read(Fields f, bool ground) => new()
    {
        Name = f.Key,
        Ground = ground,
        Studs = f.Count("studs", "the most runs it takes"),
        Rating = f.Amount<Amps>("rating", "what it carries"),
    };
}

/// <summary>A point on the vehicle's body or frame to which grounds are bolted.</summary>
public sealed record ChassisPoint : Gear
{
    public override string Kind => "chassis point";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("", TerminalRole.Ground)];

    /// <summary>bare metal, painted or unknown.</summary>
    public Written<string>? Surface { get; init; }

    /// <summary>body, frame, seat rail, bracket, bolt through carpet, or a part that a ground must not share.</summary>
    public Written<string>? On { get; init; }

    internal static ChassisPoint Read(Fields f) => new()
    {
        Name = f.Key,
        Surface = f.Word("surface", "what the lug sits on", ["bare metal", "painted", "unknown"], "unknown"),
        On = f.Word("on", "what the point is part of", ["body", "frame", "seat rail", "bracket", "bolt through carpet", "seat bolt", "belt anchor", "airbag part", "fuel part", "brake part"], "body"),
    };
}

/// <summary>Joins two batteries while charging and parts them otherwise.</summary>
public sealed record Isolator : Gear
{
    public override string Kind => "isolator";

    protected override bool ComesCovered => true;

    public override ImmutableArray<TerminalShape> Terminals { get; } =
        [Node("main", TerminalRole.Supply), Node("second", TerminalRole.Supply), Node("-", TerminalRole.Ground)];

    /// <summary>relay, diode or voltage sensing.</summary>
    public Written<string>? Type { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<Volts>? Drop { get; init; }

    public ImmutableArray<Written<string>> Closed { get; init; } = [];

    internal static Isolator Read(Fields f) => new()
    {
        Name = f.Key,
        Type = f.Word("type", "how it works", ["relay", "diode", "voltage sensing"], "relay"),
        Rating = f.Amount<Amps>("rating", "what it carries"),
        Drop = f.Amount<Volts>("drop", "volts lost across it", "0.7 V for a diode, else none", zero: true),
        Closed = f.Words("closed", "states in which it joins the batteries", States.Words),
    };
}

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

/// <summary>A switch.</summary>
public sealed record Switch : Gear
{
    public override string Kind => "switch";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Node("in", TerminalRole.Any, TerminalFlow.In), Node("out", TerminalRole.Any, TerminalFlow.Out)];

    public Written<Amps>? Rating { get; init; }

    public ImmutableArray<Written<string>> Closed { get; init; } = [];

    internal static Switch Read(Fields f) => new()
    {
        Name = f.Key,
        Rating = f.Amount<Amps>("rating", "what it carries"),
        Closed = f.Words("closed", "states in which it is closed", States.Words),
    };
}

/// <summary>A plug: each cavity is one node.</summary>
public sealed record Connector : Gear
{
    public override string Kind => "connector";

    public override ImmutableArray<TerminalShape> Terminals =>
        [.. Enumerable.Range(1, Cavities).Select(n => Node(n.ToString(CultureInfo.InvariantCulture), TerminalRole.Any))];

    public int Cavities { get; init; }

    public Written<WireSize>? Gauge { get; init; }

    public Written<Amps>? Rating { get; init; }

    internal static Connector Read(Fields f) => new()
    {
        Name = f.Key,
        Cavities = f.Count("cavities", "number of cavities", "1")?.Value ?? 1,
        Gauge = f.Size("gauge", "thickest wire a cavity takes"),
        Rating = f.Amount<Amps>("rating", "what a cavity carries"),
    };
}

/// <summary>The states in which a system is computed.</summary>
public static class States
{
    /// <summary>The words that <c>closed</c> and <c>state</c> take.</summary>
    public static ImmutableArray<string> Words { get; } = ["full output", "music", "idle", "engine off", "standby"];
}
