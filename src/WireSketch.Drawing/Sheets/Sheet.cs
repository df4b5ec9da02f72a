using System.Collections.Immutable;
using WireSketch.Drawing.Layout;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>What a sheet is about.</summary>
public enum SheetKind
{
    /// <summary>The whole system on one sheet.</summary>
    Whole,

    /// <summary>Devices and bundles, with counts.</summary>
    Overview,

    /// <summary>Supply and ground, or supply alone where grounds have a sheet of their own.</summary>
    Supply,

    Ground,

    Signal,

    Speakers,
}

/// <summary>A sheet before anything has a place: the graph to lay out, and what to write and draw at each of its parts.</summary>
/// <param name="Kind">What it is about.</param>
/// <param name="Name">Its name, such as <c>Supply and ground, 2 of 3</c>.</param>
/// <param name="Graph">What to lay out.</param>
/// <param name="Devices">What stands at each device of the graph, in its order.</param>
/// <param name="Wires">What stands at each wire of the graph, in its order.</param>
/// <param name="Form">How much room its labels have.</param>
internal sealed record Sheet(
    SheetKind Kind, string Name, SheetGraph Graph, ImmutableArray<SheetDevice> Devices, ImmutableArray<SheetWire> Wires, LabelForm Form);

/// <summary>How prominent a stretch of text is.</summary>
internal enum TextEmphasis
{
    Plain,

    /// <summary>An id, a name or a rating.</summary>
    Strong,

    /// <summary>Less than the rest: a role, a place.</summary>
    Quiet,

    /// <summary>A computed number.</summary>
    Computed,
}

/// <summary>A stretch of text of one emphasis.</summary>
internal readonly record struct SheetText(string Text, TextEmphasis Emphasis = TextEmphasis.Plain);

/// <summary>A line of text.</summary>
internal readonly record struct TextLine(ImmutableArray<SheetText> Parts)
{
    public static TextLine Of(string text, TextEmphasis emphasis = TextEmphasis.Plain) => new([new(text, emphasis)]);
}

/// <summary>What is written and drawn at a device.</summary>
/// <param name="Id">Its id in the graph, and in the drawing.</param>
/// <param name="Gear">The device it stands for; null for a reference or a group.</param>
/// <param name="Sign">Its symbol.</param>
/// <param name="Name">Its name, in lines.</param>
/// <param name="Captions">What it is and where, under the name.</param>
/// <param name="Facts">Settings and computed numbers, at the foot of the box.</param>
/// <param name="Ports">Names written at its terminals, in the order of the graph.</param>
/// <param name="InVehicle">It was there before: drawn dashed.</param>
/// <param name="Subjects">Ids by which findings name it.</param>
internal sealed record SheetDevice(
    string Id, Gear? Gear, DeviceSymbol Sign, ImmutableArray<string> Name, ImmutableArray<string> Captions, ImmutableArray<TextLine> Facts,
    ImmutableArray<string> Ports,
    bool InVehicle, ImmutableArray<string> Subjects)
{
    /// <summary>For a reference: the run that goes on elsewhere.</summary>
    public string? Reference { get; init; }

    /// <summary>Says in full what it is, for people who do not see the drawing.</summary>
    public string AccessibleText => string.Join(", ", [string.Join(' ', Name), .. Captions]);
}

/// <summary>What a wire is drawn like, and its label.</summary>
/// <param name="Run">The run it belongs to, as its label and <c>data-run</c> name it.</param>
/// <param name="Kind">What it carries.</param>
/// <param name="From">Terminals that the run begins at on this sheet.</param>
/// <param name="To">Terminals that it ends at on this sheet.</param>
/// <param name="Step">Thickness, 1 to 4.</param>
/// <param name="Colors">Main color and tracer, of several cores those of the one that is drawn; empty if unknown.</param>
/// <param name="Label">Lines of its label.</param>
/// <param name="AccessibleText">Says what it is and where it goes, for people who do not see the drawing.</param>
internal sealed record SheetWire(
    string Run, RunKind Kind, ImmutableArray<string> From, ImmutableArray<string> To, int Step, ImmutableArray<ConductorColor> Colors,
    ImmutableArray<TextLine> Label,
    string AccessibleText)
{
    /// <summary>Every color that its label names.</summary>
    public ImmutableArray<ConductorColor> LabelColors { get; init; } = [];

    /// <summary>More than one run: a bundle of an overview.</summary>
    public bool IsBundle { get; init; }

    /// <summary>Id of the net that it belongs to; empty for a bundle.</summary>
    public string Net { get; init; } = "";

    /// <summary>What is not new is drawn lighter.</summary>
    public Language.Origin Origin { get; init; }

    /// <summary>In the vehicle already.</summary>
    public bool InVehicle => Origin != Language.Origin.New;

    /// <summary>Its cores part without being joined: no dot stands where they do.</summary>
    public bool Fans { get; init; }

    /// <summary>For a bundle: what the runs of each line of its label carry.</summary>
    public ImmutableArray<RunKind> LabelKinds { get; init; } = [];

    /// <summary>On a sheet with a heat scale: the wire's step; null for a wire that the scale says nothing about.</summary>
    public int? HeatStep { get; init; }
}
