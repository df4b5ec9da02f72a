using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>How runs, lengths and devices are spoken of in findings, and where they stand in the file.</summary>
internal static class RunText
{
    /// <summary>A length in the units of the file: its first written length decides between feet and meters.</summary>
    public static string Length(InstalledSystem install, Meters length)
    {
        var first = install.Spec.Runs.Select(r => r.Length?.Words)
            .Concat(install.Spec.Paths.Select(p => p.Length?.Words))
            .FirstOrDefault(w => w is not null);
        var american = first is null || first.EndsWith("in", StringComparison.Ordinal) || first.EndsWith("ft", StringComparison.Ordinal)
            || first.EndsWith("inch", StringComparison.Ordinal)
            || first.EndsWith("inches", StringComparison.Ordinal)
            || first.EndsWith("foot", StringComparison.Ordinal)
            || first.EndsWith("feet", StringComparison.Ordinal) || first.EndsWith('"') || first.EndsWith('\'');
        return american
            ? Quantity.PrintIn(length, length.Feet < 3 ? Meters.Units[3] : Meters.Units[4])
            : Quantity.PrintIn(length, length.Value < 1 ? Meters.Units[1] : Meters.Units[2]);
    }

    /// <summary>A length as a value of a finding, in the units of the file.</summary>
    public static PrintedValue Measure(InstalledSystem install, Meters length) => PrintedValue.Of(length, Length(install, length));

    /// <summary>A run with its size and length: <c>P1 (4 AWG, 17 ft)</c>.</summary>
    public static FindingText Full(InstalledSystem install, WiredRun run) => run.Length is { } known
        ? FindingText.Of($"{run.Id} ({Gauge(run)}, {PrintedValue.Of(known, run.Run.Length?.Words ?? Length(install, known)):length})")
        : $"{run.Id} ({Gauge(run)})";

    /// <summary>The size of a run as a value of a finding.</summary>
    public static FindingText Gauge(WiredRun run) => $"{PrintedValue.Of(run.Wire.Size, Size(run)):size}";

    /// <summary>A state as part of a sentence: <c>at full output</c>, <c>with the engine off</c>.</summary>
    public static string During(SystemState state) => state switch
    {
        SystemState.FullOutput => "at full output",
        SystemState.Music => "while music plays",
        SystemState.Idle => "at idle",
        SystemState.EngineOff => "with the engine off",
        _ => "at rest",
    };

    /// <summary>A state as a value of a finding, said as <see cref="During"/> says it.</summary>
    public static StatePhrase InState(SystemState state) => new(SystemStates.WordOf(state), During(state));

    /// <summary>The size as the user wrote it.</summary>
    public static string Size(WiredRun run) =>
        run.Wire.IsAuto ? $"{run.Wire.Size}, chosen"
            : run.Wire.Material == Language.ConductorMaterial.Clad ? run.Wire.SizeWords + " CCA"
            : run.Wire.SizeWords;

    public static WiredRun Of(InstalledSystem install, Conductor conductor) => install.Wiring.RunsById[conductor.RunId];

    /// <summary>Where a run's wire is written.</summary>
    public static SourceSpan WireAt(WiredRun run) => run.Run.Wire?.Words.At ?? run.Run.Name.At;

    /// <summary>Where the end of a run at a terminal is written.</summary>
    public static SourceSpan LandsAt(WiredRun run, Terminal terminal) =>
        run.From.Concat(run.To).Where(e => e.Nodes.Any(n => n.Index == terminal.Index)).Select(e => (SourceSpan?)e.At).FirstOrDefault()
            ?? run.Run.Name.At;

    /// <summary>Where a run's length is written.</summary>
    public static SourceSpan LengthAt(WiredRun run) =>
        run.Run.Length?.At ?? (run.Run.Along.IsEmpty ? run.Run.Name.At : run.Run.Along[0].At);

    /// <summary>Where a fuse's rating is written; else where the fuse is.</summary>
    public static SourceSpan RatingAt(InternalConnection link) =>
        OwnRating(link)?.At ?? link.At ?? link.Gear!.Name.At;

    /// <summary>What a protective link is called.</summary>
    public static string Device(InternalConnection link) => link.Kind == ConnectionKind.Breaker ? "breaker" : "fuse";

    /// <summary>A fuse with its rating as written: <c>the 60 A fuse of P1</c>, <c>the 15 A fuse fuses.2</c>.</summary>
    public static FindingText Named(InternalConnection link) => Named(link, "rating");

    /// <summary>A fuse with its rating as written, where the rating is what was measured, or the limit.</summary>
    public static FindingText Named(InternalConnection link, string part)
    {
        var rating = FindingText.None;
        if (link.Rating is { } amps)
        {
            rating = new FindingText(0, 2);
            rating.AppendFormatted(PrintedValue.Of(amps, Rating(link, amps)), part);
            rating.AppendLiteral(" ");
        }

        var dot = link.Id.LastIndexOf('.');
        return IsHolder(link) && dot > 0
            ? FindingText.Of($"the {rating}{Device(link)} of {link.Id[..dot]}")
            : $"the {rating}{Device(link)} {link.Id}";
    }

    /// <summary>The gear or run that a protective link belongs to, as <c>accept</c> names it.</summary>
    public static string Subject(InternalConnection link) =>
        IsHolder(link) && link.Id.LastIndexOf('.') is > 0 and var dot ? link.Id[..dot] : link.Gear?.Id ?? link.Id;

    /// <summary>A list in words: <c>P1, P2 and P3</c>.</summary>
    public static string List(IEnumerable<string> names) => EnglishText.And([.. names]);

    /// <summary>
    /// The words of a text with another size of wire in place of the run's own, as an edit; none if the size is not written there.
    /// </summary>
    public static ImmutableArray<Fix> SizeFix(WiredRun run, WireSize size)
    {
        if (run.Run.Wire is not { SizeWords: { } was } wire || !wire.Words.At.Words.Contains(was, StringComparison.Ordinal))
        {
            return [];
        }

        var words = wire.Words.At.Words;
        var at = words.IndexOf(was, StringComparison.Ordinal);
        return [
            new(
                $"make {run.Id} {size}",
                [new(wire.Words.At, words[..at] + size + words[(at + was.Length)..])]) { Wants = new(run.Id, size) }
        ];
    }

    /// <summary>Another rating in place of a fuse's own, as an edit; none if the rating is not written.</summary>
    public static ImmutableArray<Fix> RatingFix(InternalConnection link, Amps rating)
    {
        var at = OwnRating(link)?.At ?? link.At;
        return at is { } span && span.Words.EndsWith('A') && char.IsAsciiDigit(span.Words[0])
            ? [new($"fit {rating} instead of {span.Words}", [new(span, rating.ToString())])]
            : [];
    }

    /// <summary>It is all there is to its device: a fuse or breaker that stands by itself, or in a run.</summary>
    private static bool IsHolder(InternalConnection link) => link is { Join.Suffix: "", Gear.OnlyProtects: true };

    private static Written<Amps>? OwnRating(InternalConnection link) => IsHolder(link) ? link.Join!.Rating : null;

    private static string Rating(InternalConnection link, Amps rating) =>
        OwnRating(link)?.Words ?? rating.ToString();
}
