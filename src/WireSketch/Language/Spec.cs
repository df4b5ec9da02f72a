using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>A whole spec, typed, as the user wrote it. Nothing is computed or resolved yet.</summary>
public sealed record Spec
{
    /// <summary>The file it was read from.</summary>
    public required SourceFile File { get; init; }

    /// <summary>The files it uses, in order.</summary>
    public ImmutableArray<SourceFile> Used { get; init; } = [];

    public Job Job { get; init; } = Job.None;

    /// <summary>Zones in drawing order; the usual four if none is named.</summary>
    public ImmutableArray<Zone> Zones { get; init; } = [];

    /// <summary>Names of all parts that can be named, those of used files included, with where they are declared.</summary>
    public ImmutableArray<Written<string>> Parts { get; init; } = [];

    public ImmutableArray<WireType> Wires { get; init; } = [];

    public ImmutableArray<Gear> Gear { get; init; } = [];

    public ImmutableArray<VehiclePath> Paths { get; init; } = [];

    public ImmutableArray<Run> Runs { get; init; } = [];

    public SpecSettings Settings { get; init; } = SpecSettings.None;

    public ImmutableArray<Reading> Readings { get; init; } = [];

    public ImmutableArray<Response> Responses { get; init; } = [];

    public ImmutableArray<AcceptEntry> Accepted { get; init; } = [];

    /// <summary>Ids of gear and runs that are written but could not be understood: what names them is not to be called wrong.</summary>
    public ImmutableArray<string> Unread { get; init; } = [];

    /// <summary>Ids of gear with a slip that may have cost it terminals: that it seems to lack one is not to be called wrong.</summary>
    public ImmutableArray<string> Doubtful { get; init; } = [];

    /// <summary>Part of the file could not be read at all: what is missing here may stand in the file.</summary>
    public bool Broken { get; init; }

    /// <summary>The file holds nothing but parts, wires and zones, for other specs to use.</summary>
    public bool OnlyShared { get; init; }
}

/// <summary>Defaults of one file.</summary>
public sealed record SpecSettings
{
    public static SpecSettings None { get; } = new();

    /// <summary>Slack added to each cut piece, as a share; 10 % if neither is given.</summary>
    public Written<Share>? SlackShare { get; init; }

    /// <summary>Slack added to each cut piece, as a length.</summary>
    public Written<Meters>? SlackLength { get; init; }

    public Written<Meters>? RoundTo { get; init; }

    /// <summary>letter, A4, A3 or tabloid, perhaps with upright.</summary>
    public Written<SheetSize>? Paper { get; init; }

    public bool Upright { get; init; }

    /// <summary>AWG or mm2: the system that <c>auto</c> chooses from.</summary>
    public Written<SizeSystem>? Sizes { get; init; }

    /// <summary>Resistance of one crimped or screwed connection.</summary>
    public Written<Ohms>? Termination { get; init; }

    /// <summary>Where gear and runs come from that do not say.</summary>
    public Origin? Origin { get; init; }

    public Written<Share>? DropCritical { get; init; }

    public Written<Share>? DropOther { get; init; }

    internal static SpecSettings Read(Fields f)
    {
        Written<Share>? share = null;
        Written<Meters>? length = null;
        if (f.Text("slack", "added to each cut piece: a share or a length", Assume.Slack.Words) is { } slack)
        {
            if (Quantity.TryRead<Share>(slack.Value, out var s, out _))
            {
                share = new(s, slack.Words, slack.At);
            }
            else if (Quantity.TryRead<Meters>(slack.Value, out var m, out _))
            {
                length = new(m, slack.Words, slack.At);
            }
            else
            {
                f.Report(new(
                    "spec/value",
                    Severity.Error,
                    $"\"{slack.Value}\" is neither a share nor a length: slack is written as 10 % or 6 in",
                    slack.At));
            }
        }

        var drop = f.Map("drop", "limits of voltage drop", d => new Drop(
            d.Amount<Share>("critical", "for amplifiers, head units, processors and what is critical", Assume.DropCritical.Words),
            d.Amount<Share>("other", "for everything else", Assume.DropOther.Words)));
        return new()
        {
            SlackShare = share,
            SlackLength = length,
            RoundTo = f.Amount<Meters>(
                "round-to",
                "cut lengths are rounded up to a multiple of this",
                "1 in, or 1 cm if the file's first length is metric"),
            Paper = f.Choice("paper", "size of the sheets", SheetSizes.Words, "letter"),
            Upright = f.Flag("upright", "sheets stand upright", "false")?.Value ?? false,
            Sizes = f.Choice("sizes", "the system of sizes that auto chooses from", SizeSystems.Words, "as the file's first wire"),
            Termination = f.Amount("termination", "resistance of one crimped or screwed connection", Assume.Termination, zero: true),
            Origin = f.Choice(
                "origin",
                "of gear and runs that say none: existing where a whole job was fitted before",
                Origins.Words,
                "new")?.Value,
            DropCritical = drop?.Critical,
            DropOther = drop?.Other,
        };
    }

    private sealed record Drop(Written<Share>? Critical, Written<Share>? Other);
}

/// <summary>Something measured on the finished vehicle.</summary>
public sealed record Reading
{
    public Written<string>? At { get; init; }

    /// <summary>As written: volts, amps or ohms.</summary>
    public Written<string>? Reads { get; init; }

    public Written<SystemState>? State { get; init; }

    public Written<string>? Against { get; init; }

    public required SourceSpan Place { get; init; }

    internal static Reading Read(Fields f)
    {
        f.Require("at", "reads");
        return ReadFacts(f);
    }

    private static Reading ReadFacts(Fields f) => new()
    {
        Place = f.At,
        At = f.Text("at", "terminal, pair or run that was measured"),
        Reads = Measured(f),
        State = f.Choice("state", "state of the system", SystemStates.Words, "full output"),
        Against = f.Text("against", "where the other lead was", "the device's own -"),
    };

    private static Written<string>? Measured(Fields f)
    {
        var reads = f.Text("reads", "what the meter showed: volts, amperes or ohms, such as 12.3 V, 30 mA or 2.1 ohm");
        if (reads is not { } r
            || Quantity.TryRead<Volts>(r.Value, out _, out _)
            || Quantity.TryRead<Amps>(r.Value, out _, out _)
            || Quantity.TryRead<Ohms>(r.Value, out _, out _))
        {
            return reads;
        }

        f.Report(new(
            "spec/unit",
            Severity.Error,
            $"\"{r.Value}\" is no reading of a meter: {Quantity.UnitList<Volts>()}, {Quantity.UnitList<Amps>()}, "
                + $"{Quantity.UnitList<Ohms>()} would fit",
            r.At)
        { Help = "write it as 12.3 V, 30 mA or 2.1 ohm" });
        return null;
    }
}

/// <summary>Band levels measured at a source.</summary>
public sealed record Response
{
    public Written<string>? At { get; init; }

    public Written<string>? Volume { get; init; }

    /// <summary>As written, or as they stand in the file that <see cref="Csv"/> names.</summary>
    public ImmutableArray<(Written<Hertz> Key, Written<Decibels> Value)> Levels { get; init; } = [];

    public Written<string>? Csv { get; init; }

    public Written<string>? Wav { get; init; }

    public required SourceSpan Place { get; init; }

    internal static Response Read(Fields f)
    {
        f.Require("at", "volume");
        f.Choose(needed: true, "levels", "csv", "wav");
        return ReadFacts(f);
    }

    private static Response ReadFacts(Fields f) => new()
    {
        Place = f.At,
        At = f.Text("at", "the source's group or pair that was measured"),
        Volume = f.Text("volume", "the volume setting"),
        Levels = f.Table<Hertz, Decibels>("levels", "level by band, such as { 63 Hz: -3 dB, 80 Hz: -1 dB }"),
        Csv = f.Text("csv", "a file with a line for each band, 63 Hz, -3 dB; or bare numbers under a heading of Hz and dB"),
        Wav = f.Text("wav", "a recording of pink noise"),
    };
}

/// <summary>A finding that was looked at and accepted.</summary>
public sealed record AcceptEntry
{
    public Written<string>? Rule { get; init; }

    public Written<string>? At { get; init; }

    public Written<string>? Because { get; init; }

    /// <summary>The severity that was accepted; null if it is not written.</summary>
    public Severity? Severity { get; init; }

    /// <summary>The measured value that was accepted, as the finding printed it.</summary>
    public Written<string>? Value { get; init; }

    public required SourceSpan Place { get; init; }

    internal static AcceptEntry Read(Fields f)
    {
        f.Require("rule", "at", "because");
        return ReadFacts(f);
    }

    private static AcceptEntry ReadFacts(Fields f) => new()
    {
        Place = f.At,
        Rule = f.Text("rule", "the rule's id"),
        At = f.Text("at", "the gear, run or terminal it concerns"),
        Because = f.Text("because", "why it is right here"),
        Severity = f.Choice("severity", "how grave it was when it was accepted; needed for an error", Severities.Words)?.Value,
        Value = f.Text("value", "the value that was accepted, as the finding names it; needed for an error that has one"),
    };
}

/// <summary>Size of the sheets.</summary>
public enum SheetSize
{
    Letter,
    A4,
    A3,
    Tabloid,
}

/// <summary>The words of <see cref="SheetSize"/>.</summary>
public static class SheetSizes
{
    public static ChoiceWords<SheetSize> Words { get; } = new(
        (SheetSize.Letter, "letter"),
        (SheetSize.A4, "A4"),
        (SheetSize.A3, "A3"),
        (SheetSize.Tabloid, "tabloid"));
}

/// <summary>A system of wire sizes.</summary>
public enum SizeSystem
{
    Awg,
    Metric,
}

/// <summary>The words of <see cref="SizeSystem"/>.</summary>
public static class SizeSystems
{
    public static ChoiceWords<SizeSystem> Words { get; } = new((SizeSystem.Awg, "AWG"), (SizeSystem.Metric, "mm2"));
}
