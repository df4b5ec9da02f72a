using System.Collections.Immutable;
using WireSketch.Language.Kinds;

namespace WireSketch.Language;

/// <summary>Name of the small symbol drawn at a device's name.</summary>
public enum DeviceSymbol
{
    None,
    Battery,
    Alternator,
    Source,
    Capacitor,
    Fuse,
    Breaker,
    Chassis,
    Relay,
    Switch,
    Isolator,
    Speaker,
    Lamp,
    Motor,
    Resistor,
    Amplifier,
    HeadUnit,
    Processor,
    Crossover,
    Block,
    Tap,
    Plug,
    Knob,
    Cold,
    Inverter,
    Reference,
}

/// <summary>What gear is for, by which an overview groups it.</summary>
public enum DeviceFamily
{
    Source,
    SoundDevice,
    Speaker,
    Load,
    JointOrSwitch,
}

/// <summary>The figure in which gear is drawn.</summary>
public enum DrawnForm
{
    Box,

    /// <summary>A box that may be no higher than its name, where a single run meets it.</summary>
    SlimBox,

    /// <summary>A slim box at the end of a wire, kept beside what it hangs on.</summary>
    EndPoint,

    /// <summary>The symbol of a point on the body.</summary>
    GroundPoint,

    /// <summary>One node for many runs, each at a port of its own.</summary>
    Bar,
}

/// <summary>The side of a box at which a terminal is drawn.</summary>
public enum DrawnSide
{
    /// <summary>Returns below, what comes in at the left, what goes out at the right, anything else towards its partner.</summary>
    ByFlow,
    Left,
    Right,
    Top,
    FacingPartner,
}

/// <summary>How gear is drawn, and what is written at it.</summary>
public sealed record GearDrawing
{
    public required DeviceSymbol Symbol { get; init; }

    public required DeviceFamily Family { get; init; }

    public required DrawnForm Form { get; init; }

    /// <summary>Others hang on it: in an overview it stands by itself.</summary>
    public required bool IsHub { get; init; }

    /// <summary>Its left and right may be exchanged: it stores, shares, breaks or uses supply, or ends a speaker wire.</summary>
    public required bool HasFreeSides { get; init; }

    /// <summary>Plays sound: states of the system are named by music.</summary>
    public required bool PlaysSound { get; init; }

    /// <summary>Joined to its device by a plug of its own: no run is drawn to it.</summary>
    public required bool PlugsIn { get; init; }

    /// <summary>What it is, in the words of the trade; empty if its name says it all.</summary>
    public required string Words { get; init; }

    /// <summary>What it is, for the owner of the vehicle.</summary>
    public required string PlainWords { get; init; }

    /// <summary>What the installer sets: on the device itself, of an empty name, and on its channels.</summary>
    public ImmutableArray<(string Of, ChannelSettings Settings)> Settings { get; init; } = [];

    /// <summary>Parts of a text that are there, with commas between them.</summary>
    public static string Join(params ReadOnlySpan<string?> parts)
    {
        var joined = "";
        foreach (var part in parts)
        {
            joined += string.IsNullOrEmpty(part) ? "" : joined.Length == 0 ? part : ", " + part;
        }

        return joined;
    }
}
