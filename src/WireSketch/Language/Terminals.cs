using System.Collections.Immutable;

namespace WireSketch.Language;

/// <summary>What a terminal is for; decides the kind of a run and the side of the box on which it is drawn.</summary>
public enum TerminalRole
{
    /// <summary>Positive supply.</summary>
    Supply,

    /// <summary>Return to the body or to a battery's negative.</summary>
    Ground,

    /// <summary>A wake or switching wire.</summary>
    Control,

    /// <summary>Line-level signal.</summary>
    Line,

    /// <summary>Speaker-level signal, or a coil.</summary>
    Speaker,

    /// <summary>Whatever is wired to it: a splice, a connector, a contact.</summary>
    Any,
}

/// <summary>Which way current or signal goes, as seen from the device.</summary>
public enum TerminalFlow
{
    In,
    Out,
    Both,
}

/// <summary>How many conductors a terminal is.</summary>
public enum TerminalForm
{
    /// <summary>One conductor.</summary>
    Node,

    /// <summary>Two conductors, <c>.+</c> and <c>.-</c>.</summary>
    Pair,

    /// <summary>Several members in a stated order.</summary>
    Group,
}

/// <summary>A terminal that a device offers.</summary>
/// <param name="Name">Its name without the device's: <c>+</c>, <c>front</c>, <c>out.1</c>; empty for a device that is its own
/// terminal.</param>
/// <param name="Form">How many conductors it is.</param>
/// <param name="Role">What it is for.</param>
/// <param name="Flow">Which way.</param>
/// <param name="Members">A group's members, in order, with their full names (<c>front.left</c>).</param>
public sealed record TerminalShape(
    string Name, TerminalForm Form, TerminalRole Role, TerminalFlow Flow, ImmutableArray<TerminalShape> Members)
{
    public static TerminalShape Node(string name, TerminalRole role, TerminalFlow flow = TerminalFlow.Both) =>
        new(name, TerminalForm.Node, role, flow, []);

    public static TerminalShape Pair(string name, TerminalRole role, TerminalFlow flow) => new(name, TerminalForm.Pair, role, flow, []);

    public static TerminalShape Group(string name, TerminalRole role, TerminalFlow flow, IEnumerable<string> members) =>
        new(name, TerminalForm.Group, role, flow, [.. members.Select(m => Pair($"{name}.{m}", role, flow))]);

    /// <summary>The usual names of so many channels: mono; left and right; front and rear left and right; else numbers.</summary>
    public static ImmutableArray<string> ChannelNames(int channels) => channels switch
    {
        1 => ["mono"],
        2 => ["left", "right"],
        4 => ["fl", "fr", "rl", "rr"],
        _ => [.. Enumerable.Range(1, Math.Max(0, channels)).Select(n => n.ToString(System.Globalization.CultureInfo.InvariantCulture))],
    };
}

/// <summary>Another name of a terminal.</summary>
/// <param name="Name">The name, without the device's.</param>
/// <param name="Terminal">The terminal, pair or group that it stands for.</param>
/// <param name="Side">'+' or '-' for one side of a pair, else a space.</param>
public sealed record TerminalAlias(string Name, TerminalShape Terminal, char Side);
