using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Topology;

/// <summary>What a run carries.</summary>
public enum RunKind
{
    Supply,
    Ground,
    Line,
    Speaker,
    Control,
}

/// <summary>A terminal, pair or group at an end of a run, as it is named and drawn.</summary>
/// <param name="Id">Full name: <c>amp.sub</c>, <c>radio.front</c>, <c>amp.+</c>.</param>
/// <param name="Gear">Its device.</param>
/// <param name="Shape">What was named; for a single side of a pair, the pair.</param>
/// <param name="Nodes">The single terminals it stands for, pairs as + then −, members in order.</param>
/// <param name="At">Where it is written.</param>
public sealed record RunEnd(string Id, Gear Gear, TerminalShape Shape, ImmutableArray<Terminal> Nodes, Text.SourceSpan At)
{
    /// <summary>True if pairs: its nodes alternate + and −.</summary>
    public bool IsPairs => Nodes.Length > 1;
}

/// <summary>A run with its ends found and its conductors made.</summary>
public sealed class WiredRun
{
    /// <summary>Taken to compute with where nobody knows a length (common practice, no published source).</summary>
    public static Meters AssumedLength => Assume.Length.Value;

    /// <summary>As written.</summary>
    public required Run Run { get; init; }

    /// <summary>What it carries.</summary>
    public required RunKind Kind { get; init; }

    /// <summary>Its beginning: one end, or the two single terminals of a pair.</summary>
    public required ImmutableArray<RunEnd> From { get; init; }

    /// <summary>Its other ends; several for a run to several loads.</summary>
    public required ImmutableArray<RunEnd> To { get; init; }

    /// <summary>All its conductors, jumpers of a hookup included.</summary>
    public required ImmutableArray<Conductor> Conductors { get; init; }

    /// <summary>The device of its inline fuse or breaker; null if it has none, or if the fuse sits in a block.</summary>
    public required ProtectiveDevice? Holder { get; init; }

    /// <summary>Its wire, with every default filled in.</summary>
    public required WireProperties Wire { get; init; }

    /// <summary>Length of one conductor, without slack; null if neither a length nor a path gives it.</summary>
    public required Meters? Length { get; init; }

    /// <summary>
    /// The paths that it follows, in order: as written, else the shortest way between its ends where it has no length either.
    /// </summary>
    public required ImmutableArray<RoutedPath> Route { get; init; }

    /// <summary>The length, or what is taken for it where a resistance or an amount is wanted.</summary>
    public Meters LengthTaken => Length ?? AssumedLength;

    public string Id => Run.Id;

    /// <summary>In the vehicle already: drawn lighter, not cut, not bought.</summary>
    public bool InVehicle => Run.InVehicle;

    /// <summary>What guards it where it passes a wall: as written, else what its path passes; null if neither says.</summary>
    public string? Guard => Route.SelectMany(r => r.Path.Passes).Prepend(Run.Through ?? default).Select(p => p.Value)
        .FirstOrDefault(w => w is not null && PassageWords.IsGuard(w));

    /// <summary>The same run, once it is known what it carries.</summary>
    internal WiredRun Carrying(RunKind kind, ImmutableArray<Conductor> conductors) => new()
    {
        Run = Run,
        Kind = kind,
        From = From,
        To = To,
        Conductors = conductors,
        Holder = Holder,
        Wire = Wire,
        Length = Length,
        Route = Route,
    };

    /// <summary>True if current comes and goes in the same cable.</summary>
    public bool IsTwoWire => From.Sum(e => e.Nodes.Length) > 1;
}
