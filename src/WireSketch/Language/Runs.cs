using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Language;

/// <summary>A wire or cable as the user wrote it.</summary>
public sealed record Run
{
    public required Written<string> Name { get; init; }

    public string Id => Name.Value;

    /// <summary>Names of terminals, pairs or groups; a list of two single terminals is a pair.</summary>
    public ImmutableArray<Written<string>> From { get; init; } = [];

    public ImmutableArray<Written<string>> To { get; init; } = [];

    public WireChoice? Wire { get; init; }

    /// <summary>Something stands under <c>wire</c> that could not be understood, and was reported.</summary>
    public bool WireIsRefused { get; init; }

    /// <summary>Something stands under <c>hookup</c>, understood or refused.</summary>
    public bool HookupIsWritten { get; init; }

    /// <summary>Length of one conductor, as cut.</summary>
    public Written<Meters>? Length { get; init; }

    public ImmutableArray<Written<string>> Along { get; init; } = [];

    /// <summary>Length of each link between the loads of a run to several.</summary>
    public Written<Meters>? Link { get; init; }

    public InlineProtection? Protection { get; init; }

    /// <summary>As written, else as the file's settings say; null until both are read, which is new.</summary>
    public Origin? Origin { get; init; }

    /// <summary>In the vehicle already: drawn lighter, not cut, not bought.</summary>
    public bool InVehicle => Origin is { } origin && origin != Language.Origin.New;

    public Hookup? Hookup { get; init; }

    /// <summary>Made onto an existing wire of the vehicle.</summary>
    public bool Tap { get; init; }

    public Written<string>? ColorAtVehicle { get; init; }

    /// <summary>What it passes a wall by; judged only where it is one of <see cref="PassageWords.Guards"/>.</summary>
    public Written<string>? Through { get; init; }

    public ImmutableArray<Written<Covering>> Protect { get; init; } = [];

    public bool Twist { get; init; }

    public bool Shield { get; init; }

    public Written<string>? Notes { get; init; }

    internal static Run Read(Fields f)
    {
        var fuse = f.MapOrWords(
            "fuse",
            "a fuse on the run",
            m => InlineProtection.Read(m, breaker: false),
            w => InlineProtection.FromWords(w, f, breaker: false));
        var breaker = f.MapOrWords(
            "breaker",
            "a circuit breaker on the run",
            m => InlineProtection.Read(m, breaker: true),
            w => InlineProtection.FromWords(w, f, breaker: true));
        f.Choose(needed: false, "fuse", "breaker");
        f.Require("from", "to");
        return new()
        {
            Name = f.Key,
            From = f.Texts("from", "the terminal, pair or list of them at which it begins"),
            To = f.Texts("to", "the terminal, pair or list of them at which it ends"),
            Wire = f.Worded(
                "wire",
                "size, then color (one for each core joined by +), CCA, insulation temperature; or a wire type's id; line pair; auto",
                w => WireChoice.FromWords(w, f)),
            WireIsRefused = f.MayHave("wire"),
            Length = f.Amount<Meters>("length", "length of one conductor, as cut"),
            Along = f.Texts(
                "along",
                "the paths it follows, in order; with no length either, the shortest way over paths between its ends is taken"),
            Link = f.Amount<Meters>("link", "length of each link between the loads of a run to several", "none", zero: true),
            Protection = fuse ?? breaker,
            Origin = Origins.Read(f, "as settings say, else new"),
            Hookup = f.MapOrWords(
                "hookup",
                "series, parallel or series-parallel, for a run to several coils or speakers",
                Hookup.Read,
                w => Hookup.FromWords(w, f)),
            HookupIsWritten = f.Has("hookup"),
            Tap = f.Flag("tap", "made onto an existing wire of the vehicle", "false")?.Value ?? false,
            ColorAtVehicle = f.Text("color-at-vehicle", "color of that wire"),
            Through = f.Text(
                "through",
                $"what it passes a wall by: {PassageWords.Listed(PassageWords.Guards)} guard it, other words are printed only"),
            Protect = f.Choices("protect", "what covers it", Coverings.Words),
            Twist = f.Flag("twist", "its conductors are twisted", "false")?.Value ?? false,
            Shield = f.Flag("shield", "it is shielded", "false")?.Value ?? false,
            Notes = f.Text("notes", "anything else worth keeping"),
        };
    }
}

/// <summary>A fuse or breaker on a run: it splits the run into a near and a far piece.</summary>
public sealed record InlineProtection
{
    public bool Breaker { get; init; }

    /// <summary>Rated current, as far as it is written.</summary>
    public InlineRating Rating { get; init; } = new InlineRating.None();

    public bool Auto => Rating is InlineRating.Auto;

    public Written<FuseStyle>? Style { get; init; }

    public Written<Amps>? Breaking { get; init; }

    public Written<BreakerReset>? Reset { get; init; }

    /// <summary>Distance from the <c>from</c> end; null where the device sits in the block that the run begins at.</summary>
    public Written<Meters>? Distance { get; init; }

    /// <summary>Something stands under <c>at</c>, understood or refused.</summary>
    public bool DistanceIsWritten { get; init; }

    /// <summary>Whether its live terminals are covered.</summary>
    public Written<bool>? Covered { get; init; }

    /// <summary>hand, panel or none: what it takes to get at it.</summary>
    public Written<Reach>? Reach { get; init; }

    /// <summary>As written, else as its run; null until both are read, which is new.</summary>
    public Origin? Origin { get; init; }

    /// <summary>In the vehicle already, with its holder: not bought.</summary>
    public bool InVehicle => Origin is { } origin && origin != Language.Origin.New;

    public required Text.SourceSpan At { get; init; }

    internal static InlineProtection Read(Fields f, bool breaker) => new()
    {
        Breaker = breaker,
        At = f.At,
        Rating = InlineRating.Of(f.AmountOrAuto<Amps>("rating", "rated current, or auto")),
        Style = breaker
            ? null
            : f.Choice(
                "style",
                "construction of the fuse",
                FuseStyles.Words,
                "the smallest that comes in that rating and can break the fault current"),
        Breaking = f.Amount<Amps>("breaking", "the highest current it can break"),
        Origin = Origins.Read(f, "that of its run"),
        Reset = breaker ? f.Choice("reset", "how it is reset", BreakerResets.Words, "manual") : null,
        Distance = f.Amount<Meters>("at", "its distance from the from end; left out for a fuse in the block at that end", zero: true),
        DistanceIsWritten = f.Has("at"),
        Covered = f.Flag("covered", "its live terminals are under a cover", "true"),
        Reach = f.Choice("reach", "hand; panel (behind one that comes off); none", Reaches.Words, "hand"),
    };

    internal static InlineProtection? FromWords(Written<string> words, Fields f, bool breaker)
    {
        if (words.Value == "auto")
        {
            return new() { Breaker = breaker, At = words.At, Rating = new InlineRating.Auto(words.Words, words.At) };
        }

        if (Quantity.TryRead<Amps>(words.Value, out var amps, out var trouble))
        {
            return new() { Breaker = breaker, At = words.At, Rating = new InlineRating.Rated(new(amps, words.Words, words.At)) };
        }

        f.Report(new("spec/value", Diagnostics.Severity.Error, trouble, words.At)
        {
            Help = AmountCures.Fuse(words.Value) is { } map ? $"write {(breaker ? "breaker" : "fuse")}: {map}" : null,
        });
        return null;
    }
}

/// <summary>What is written of an inline device's rating.</summary>
public abstract record InlineRating
{
    private InlineRating()
    {
    }

    /// <summary>The current, if one is written.</summary>
    public virtual Amps? Amps => null;

    /// <summary>As written.</summary>
    public virtual string? Words => null;

    /// <summary>Where it is written.</summary>
    public virtual Text.SourceSpan? At => null;

    internal static InlineRating Of(Written<Amps?>? read) => read switch
    {
        null => new None(),
        { Value: { } amps } written => new Rated(new(amps, written.Words, written.At)),
        { } written => new Auto(written.Words, written.At),
    };

    /// <summary>Nothing is written.</summary>
    public sealed record None : InlineRating;

    /// <summary>It is to be chosen.</summary>
    public sealed record Auto(string Word, Text.SourceSpan Place) : InlineRating
    {
        public override string Words => Word;

        public override Text.SourceSpan? At => Place;
    }

    /// <summary>So many amperes.</summary>
    public sealed record Rated(Written<Amps> Current) : InlineRating
    {
        public override Amps? Amps => Current.Value;

        public override string Words => Current.Words;

        public override Text.SourceSpan? At => Current.At;
    }
}

/// <summary>How the coils and drivers at the end of a run are joined.</summary>
/// <param name="Coils">The coils of one driver.</param>
/// <param name="Drivers">The drivers among each other.</param>
/// <param name="At">Where it is written.</param>
public sealed record Hookup(HookupWay Coils, HookupWay Drivers, Text.SourceSpan At)
{
    internal static Hookup Read(Fields f) => new(
        f.Choice("coils", "the coils of one driver", HookupWays.Words, "parallel")?.Value ?? HookupWay.Parallel,
        f.Choice("drivers", "the drivers among each other", HookupWays.Words, "parallel")?.Value ?? HookupWay.Parallel,
        f.At);

    internal static Hookup FromWords(Written<string> words, Fields f)
    {
        switch (words.Value)
        {
            case "series":
                return new(HookupWay.Series, HookupWay.Series, words.At);
            case "parallel":
                return new(HookupWay.Parallel, HookupWay.Parallel, words.At);
            case "series-parallel":
                return new(HookupWay.Series, HookupWay.Parallel, words.At);
            default:
                f.Report(new(
                    "spec/value",
                    Diagnostics.Severity.Error,
                    $"\"{words.Value}\" is no hookup: series, parallel and series-parallel are",
                    words.At)
                {
                    Help = "for anything else write a map, such as hookup: { coils: parallel, drivers: series }",
                });

                // It is said already: parallel is taken meanwhile, so that nobody is told that a hookup is missing.
                return new(HookupWay.Parallel, HookupWay.Parallel, words.At);
        }
    }
}

/// <summary>What covers a run.</summary>
public enum Covering
{
    Loom,
    Conduit,
    Sleeve,
    Tape,
    Grommet,
}

/// <summary>The words of <see cref="Covering"/>.</summary>
public static class Coverings
{
    public static ChoiceWords<Covering> Words { get; } = new(
        (Covering.Loom, "loom"),
        (Covering.Conduit, "conduit"),
        (Covering.Sleeve, "sleeve"),
        (Covering.Tape, "tape"),
        (Covering.Grommet, "grommet"));
}

/// <summary>How loads are joined.</summary>
public enum HookupWay
{
    Series,
    Parallel,
}

/// <summary>The words of <see cref="HookupWay"/>.</summary>
public static class HookupWays
{
    public static ChoiceWords<HookupWay> Words { get; } = new((HookupWay.Series, "series"), (HookupWay.Parallel, "parallel"));
}
