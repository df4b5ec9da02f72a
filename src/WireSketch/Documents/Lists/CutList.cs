using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Documents.Formats;
using WireSketch.Installation;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Documents.Lists;

/// <summary>Every piece to cut, and how much of each wire that is.</summary>
/// <param name="Pieces">In the order of the spec's runs.</param>
/// <param name="Totals">By kind of wire, in order of first use.</param>
/// <param name="Lengths">How lengths were made.</param>
public sealed record CutList(ImmutableArray<CutPiece> Pieces, ImmutableArray<WireTotal> Totals, CutLength Lengths)
{
    /// <summary>Conductors in one cable of the kind <c>line pair</c>.</summary>
    private const int CoresOfLinePair = 4;

    /// <summary>What is in the vehicle already, and not cut.</summary>
    public ImmutableArray<CutPiece> InVehicle { get; init; } = [];

    /// <summary>Ends made on wire that is in the vehicle already, where a new fuse or breaker goes into it.</summary>
    internal ImmutableArray<(Conductor Conductor, Terminal At)> EndsAtNewHolders { get; init; } = [];

    public static CutList From(InstalledSystem install)
    {
        var lengths = CutLength.Of(install.Spec);
        var (existing, added) = (install.Wiring.Runs.Where(r => r.InVehicle), install.Wiring.Runs.Where(r => !r.InVehicle));
        ImmutableArray<CutPiece> pieces = [.. added.SelectMany(run => PiecesOf(run, lengths))];
        return new(pieces, WireTotal.Of(pieces), lengths)
        {
            InVehicle = [.. existing.SelectMany(run => PiecesOf(run, lengths))],
            EndsAtNewHolders =
            [
                .. existing.Where(r => r.Run.Protection is { InVehicle: false })
                    .SelectMany(r => r.Conductors.SelectMany(c => new[] { (Conductor: c, At: c.From), (Conductor: c, At: c.To) })
                        .Where(e => r.Holder is { } holder && ReferenceEquals(e.At.Gear, holder))),
            ],
        };
    }

    private static IEnumerable<CutPiece> PiecesOf(WiredRun run, CutLength lengths)
    {
        var cores = run.Conductors.Where(c => !c.IsJumper).ToImmutableArray();
        var whole = cores.Where(c => !IsBesideHolder(c, run)).ToImmutableArray();
        var split = cores.Except(whole).ToImmutableArray();
        var count = whole.Length + (split.IsEmpty ? 0 : 1);
        if (count == 1 && !split.IsEmpty)
        {
            foreach (var conductor in split)
            {
                yield return Piece(run, conductor.Id, [conductor], 1, conductor.From.Id, conductor.To.Id, conductor.Length, lengths);
            }
        }
        else if (count > 0)
        {
            var cables = run.Wire.IsLinePair ? (count + CoresOfLinePair - 1) / CoresOfLinePair : 1;
            yield return Piece(
                run,
                run.Id,
                cores,
                cables,
                Names(run.From),
                Names(run.To.Take(IsChain(run) ? 1 : run.To.Length)),
                run.LengthTaken,
                lengths) with
            {
                Cores = run.Wire.IsLinePair ? CoresOfLinePair : count,
            };
        }

        foreach (var jumper in run.Conductors.Where(c => c.IsJumper))
        {
            yield return Piece(run, jumper.Id, [jumper], 1, jumper.From.Id, jumper.To.Id, jumper.Length, lengths);
        }
    }

    private static CutPiece Piece(
        WiredRun run, string id, ImmutableArray<Conductor> conductors, int cables, string from, string to, Meters length, CutLength lengths)
    {
        var remarks = ImmutableArray.CreateBuilder<string>();
        var cut = lengths.For(length);
        if (cut.Value == 0)
        {
            remarks.Add("made up at the terminals, from an offcut");
        }

        if (run.Length is null)
        {
            remarks.Add("no length in the spec: measure before cutting");
        }

        if (run.Holder is { } holder && conductors.Length > 2)
        {
            var word = holder.Breaker ? "breaker" : "fuse";
            remarks.Add($"one core is cut for the {word}, {lengths.One(run.Run.Protection?.Distance?.Value ?? new Meters(0))} from {from}");
        }

        remarks.AddRange(Ways(run, passes: run.Holder is null || conductors.Length > 1 || PassesOn(run, conductors[0])));
        return new(
            id, run.Id, run.Kind, cables, conductors.Length, run.Wire, from, to, length, cut, run.Length is not null,
            remarks.ToImmutable(), conductors);
    }

    /// <summary>Of the two pieces beside a holder, the one that goes from one zone to another; if neither seems to, the far one.</summary>
    private static bool PassesOn(WiredRun run, Conductor piece)
    {
        var crossing = run.Conductors.FirstOrDefault(c => IsBesideHolder(c, run) && c.From.Gear?.Zone != c.To.Gear?.Zone)
            ?? run.Conductors.Last(c => IsBesideHolder(c, run));
        return crossing.Index == piece.Index;
    }

    /// <summary>How the run is led and what is done to it.</summary>
    private static IEnumerable<string> Ways(WiredRun wired, bool passes)
    {
        var run = wired.Run;
        if (passes && wired.Guard is { } guard)
        {
            yield return $"through {guard}";
        }

        if (!run.Protect.IsEmpty)
        {
            yield return $"in {string.Join(", ", run.Protect.Select(p => p.Words))}";
        }

        if (run.Twist)
        {
            yield return "twisted";
        }

        if (run.Shield)
        {
            yield return "shielded";
        }

        if (run.Tap)
        {
            yield return run.ColorAtVehicle is { } color ? $"onto the vehicle's own wire ({color.Value})" : "onto the vehicle's own wire";
        }
    }

    private static bool IsBesideHolder(Conductor conductor, WiredRun run) =>
        run.Holder is { } holder && (ReferenceEquals(conductor.From.Gear, holder) || ReferenceEquals(conductor.To.Gear, holder));

    /// <summary>A run to several devices goes to the first; links go on from there.</summary>
    private static bool IsChain(WiredRun run) => run.To.Length > 1 && run.Conductors.Any(c => c.IsJumper);

    private static string Names(IEnumerable<RunEnd> ends) => string.Join(", ", ends.Select(e => e.Id));

    /// <summary>The list for a spreadsheet: numbers in columns of their own.</summary>
    public PlainTable ForSpreadsheet() => new(
        [
            new("piece"), new("run"), new("pieces", true), new("wire"), new("cores", true), new("area_mm2", true), new("material"),
            new("color"),
            new("insulation_c", true), new("from"), new("to"), new("length_in", true), new("length_m", true),
            new("cut_in", true), new("cut_m", true), new("carries"),
            new("remarks"),
        ],
        [
            .. Pieces.Select(p => ImmutableArray.Create(
                p.Id,
                p.RunId,
                Whole(p.Pieces),
                p.Wire.SizeWords,
                Whole(p.Cores),
                PlainTable.Number(p.Wire.Size.Area.Value, 3),
                WireDescriptions.Material(p.Wire),
                WireDescriptions.Color(p.Wire),
                PlainTable.Number(p.Wire.Insulation.Value, 0),
                p.From,
                p.To,
                PlainTable.Number(p.Length.Inches, 2),
                PlainTable.Number(p.Length.Value, 4),
                PlainTable.Number(p.Cut.Inches, 2),
                PlainTable.Number(p.Cut.Value, 4),
                WireDescriptions.Carries(p.Kind),
                string.Join("; ", p.Remarks))),
        ]);

    /// <summary>The list for people.</summary>
    public PlainTable ForReading() => new(
        [new("Piece"), new("Wire"), new("Cut", true), new("From"), new("To"), new("Remarks")],
        [
            .. Pieces.Select(p => ImmutableArray.Create(
                p.Pieces == 1 ? p.Id : string.Create(CultureInfo.InvariantCulture, $"{p.Id} ({p.Pieces} pieces)"),
                WireDescriptions.Whole(p.Wire, p.Cores, p.Kind),
                p.IsMadeUp ? "–" : Lengths.Both(p.Cut), p.From, p.To, string.Join("; ", p.Remarks))),
        ]);

    /// <summary>The wire that is in the vehicle already, for people.</summary>
    public PlainTable InVehicleForReading() => new(
        [new("Piece"), new("Wire"), new("From"), new("To")],
        [
            .. InVehicle.Select(p => ImmutableArray.Create(p.Id, WireDescriptions.Whole(p.Wire, p.Cores, p.Kind), p.From, p.To)),
        ]);

    /// <summary>The totals for people.</summary>
    public PlainTable TotalsForReading() => new(
        [new("Wire"), new("Pieces", true), new("In all", true), new("Longest", true), new("To buy")],
        [
            .. Totals.Select(t =>
                ImmutableArray.Create(t.Words, Whole(t.Pieces), Lengths.Both(t.Total), Lengths.Both(t.Longest), t.ToBuy(Lengths)))
        ]);

    internal static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
