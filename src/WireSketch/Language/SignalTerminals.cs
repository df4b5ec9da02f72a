using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>One channel of a signal input.</summary>
public sealed record SignalInput
{
    /// <summary>The pair.</summary>
    public required TerminalShape Terminal { get; init; }

    /// <summary>What it does with a signal of line level.</summary>
    public required SignalAcceptance Line { get; init; }

    /// <summary>What it does with a signal of speaker level.</summary>
    public required SignalAcceptance Speaker { get; init; }

    /// <summary>The level that it is made for, which is told of where nothing is wired to it.</summary>
    public required SignalLevel Usual { get; init; }

    /// <summary>The load that it puts on what feeds it once the input load is switched on; null if it has no such switch.</summary>
    public required Written<Ohms>? SwitchedLoad { get; init; }

    /// <summary>What it does with a signal of a level; of its usual one if nothing arrives.</summary>
    public SignalAcceptance At(SignalLevel? level) => (level ?? Usual) == SignalLevel.Speaker ? Speaker : Line;
}

/// <summary>What an input does with a signal.</summary>
/// <param name="Takes">It takes signals of that level.</param>
/// <param name="Range">The volts it takes; null if nobody says.</param>
/// <param name="At">Where that is written.</param>
public sealed record SignalAcceptance(bool Takes, Range<Volts>? Range, SourceSpan? At);

/// <summary>One channel of a signal or speaker output.</summary>
public sealed record SignalOutput
{
    /// <summary>The pair.</summary>
    public required TerminalShape Terminal { get; init; }

    /// <summary>The name of its channel or group in the spec.</summary>
    public required string Group { get; init; }

    /// <summary>Where its channel or group is declared.</summary>
    public required SourceSpan DeclaredAt { get; init; }

    public required SignalLevel Level { get; init; }

    /// <summary>
    /// The inputs whose signal it carries on; the first of them that something feeds counts. Empty where the signal begins here.
    /// </summary>
    public required ImmutableArray<TerminalShape> CarriesOn { get; init; }

    /// <summary>
    /// A chain of signals may begin with its device: a source, or an amplifier that came with the vehicle. Otherwise a chain that begins
    /// there is broken before it.
    /// </summary>
    public required bool MayBeFirst { get; init; }

    /// <summary>Output over input voltage, where it follows its input.</summary>
    public Written<double>? Ratio { get; init; }

    /// <summary>Turns speaker level into line level.</summary>
    public bool ChangesLevel { get; init; }

    /// <summary>Highest voltage it gives, as written.</summary>
    public Written<Volts>? Maximum { get; init; }

    /// <summary>Lowest frequency at which it still gives its full level.</summary>
    public Written<Hertz>? Lowest { get; init; }

    /// <summary>Power by load and how it may be bridged, where it is a channel of an amplifier.</summary>
    public AmplifierChannel? Amplifies { get; init; }

    /// <summary>Meant to drive speakers: the load on it is computed.</summary>
    public bool DrivesSpeakers { get; init; }

    /// <summary>Falls silent unless it sees a load of about this.</summary>
    public Written<Ohms>? MutesWithoutLoad { get; init; }

    /// <summary>Carries a DC offset while it plays, by which a device can wake.</summary>
    public bool HasDcOffset { get; init; }

    /// <summary>Lets a DC offset of its input through.</summary>
    public bool PassesDcOffset { get; init; }

    /// <summary>What the installer sets on this channel or group.</summary>
    public ChannelSettings Settings { get; init; } = ChannelSettings.None;
}

/// <summary>What gear puts between terminals of speaker level.</summary>
public abstract record SpeakerPart;

/// <summary>A voice coil.</summary>
/// <param name="Terminal">The pair.</param>
/// <param name="Speaker">Its driver.</param>
/// <param name="Number">Its number, from 1.</param>
public sealed record VoiceCoil(TerminalShape Terminal, Speaker Speaker, int Number) : SpeakerPart;

/// <summary>A resistor across a pair, or between two single terminals.</summary>
/// <param name="First">The pair, or the first of two terminals.</param>
/// <param name="Second">The second of two terminals; null for a pair.</param>
/// <param name="Resistance">Its resistance.</param>
public sealed record ResistorPart(TerminalShape First, TerminalShape? Second, Ohms Resistance) : SpeakerPart;

/// <summary>The load that a signal input puts on what feeds it.</summary>
/// <param name="Input">The pair.</param>
/// <param name="Load">Its load.</param>
/// <param name="OnlyFromSpeakerLevel">Counts only where speaker wires come to it.</param>
public sealed record InputLoadPart(TerminalShape Input, Ohms Load, bool OnlyFromSpeakerLevel) : SpeakerPart;

/// <summary>The loads of inputs that are wired to an output appear at an input of the same device.</summary>
/// <param name="Input">The pair at which they appear.</param>
/// <param name="Output">The pair to which the inputs behind are wired.</param>
public sealed record PassedLoadPart(TerminalShape Input, TerminalShape Output) : SpeakerPart;

/// <summary>A way of a passive crossover.</summary>
/// <param name="Input">The pair that it takes the signal from.</param>
/// <param name="Output">The pair that it gives it to.</param>
/// <param name="Way">The filter between them.</param>
public sealed record CrossoverWay(TerminalShape Input, TerminalShape Output, CrossoverOutput Way) : SpeakerPart;
