using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Syntax;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Testing.Mistakes;

/// <summary>
/// A shipped spec as text, as a tree with the places of its keys, and as the install it means: for making mistakes at the right places.
/// </summary>
public sealed class GoodSpec
{
    private readonly MapNode gear;
    private readonly MapNode runs;

    /// <param name="file">A spec without errors.</param>
    /// <param name="files">The files it uses.</param>
    public GoodSpec(SourceFile file, ISpecFiles files)
    {
        File = file;
        Compiled = Compiler.Compile(file, files);
        Install = Compiled.Install ?? throw new ArgumentException($"{file.Name} is no good spec", nameof(file));
        Root = SyntaxTree.Parse(file).Value.Root;
        gear = (MapNode)Root.Find("gear")!.Value;
        runs = (MapNode)Root.Find("runs")!.Value;
    }

    public SourceFile File { get; }

    /// <summary>What the compiler says of it as it is.</summary>
    public Compilation Compiled { get; }

    public InstalledSystem Install { get; }

    public MapNode Root { get; }

    public Wiring Wiring => Install.Wiring;

    public ImmutableArray<WiredRun> Runs => Wiring.Runs;

    public ImmutableArray<Gear> Gear => Install.Spec.Gear;

    /// <summary>Runs that carry something.</summary>
    public IEnumerable<WiredRun> RunsOf(RunKind kind) => Runs.Where(r => r.Kind == kind);

    /// <summary>What is written of a run.</summary>
    public MapNode Of(WiredRun run) => (MapNode)runs.Find(run.Id)!.Value;

    /// <summary>What is written of a device.</summary>
    public MapNode Of(Gear device) => (MapNode)gear.Find(device.Id)!.Value;

    /// <summary>The map under a key; null if there is none.</summary>
    public static MapNode? Map(MapNode? map, string key) => map?.Find(key)?.Value as MapNode;

    /// <summary>The fuse or breaker written on a run.</summary>
    public MapNode? ProtectionOf(WiredRun run) => Map(Of(run), "fuse") ?? Map(Of(run), "breaker");

    /// <summary>Writes a value under a key, over the one there or as a new key before all others.</summary>
    public Edit Put(MapNode map, string key, string value)
    {
        if (map.Find(key) is { } entry)
        {
            return new(entry.Value.At, value);
        }

        var first = map.Entries[0].Key.At;
        return new(new(File, first.Start, 0), $"{key}: {value}{(map.Flow ? ", " : NewLine(first))}");
    }

    /// <summary>Leaves a key out.</summary>
    public Edit Drop(MapNode map, string key)
    {
        var at = map.Entries.IndexOf(map.Find(key)!);
        var start = map.Entries[at].Key.At.Start;
        if (map.Flow)
        {
            return at > 0
                ? new(Stretch(map.Entries[at - 1].At.End, map.Entries[at].At.End), "")
                : new(Stretch(start, map.Entries.Length > 1 ? map.Entries[1].Key.At.Start : map.Entries[0].At.End), "");
        }

        var end = File.Text.IndexOf('\n', map.Entries[at].At.End);
        return new(Stretch(File.LineStart(File.LineAt(start)), end + 1), "");
    }

    public Edit DropRun(WiredRun run) => Drop(runs, run.Id);

    public Edit DropGear(Gear device) => Drop(gear, device.Id);

    /// <summary>Adds a run before all others.</summary>
    public Edit AddRun(string facts) =>
        new(new(File, runs.Entries[0].Key.At.Start, 0), $"X1: {{ {facts} }}{NewLine(runs.Entries[0].Key.At)}");

    /// <summary>Writes something else at one end of a run.</summary>
    public Edit Retarget(WiredRun run, string end, string words) => Put(Of(run), end, words);

    /// <summary>Writes other names of terminals wherever runs name them.</summary>
    public IEnumerable<Edit> Rename(params (string From, string To)[] names) =>
        from run in runs.Entries
        from end in (string[])["from", "to"]
        let value = (run.Value as MapNode)?.Find(end)?.Value
        from scalar in value is ListNode list ? list.Items.OfType<ScalarNode>() : value is ScalarNode one ? [one] : []
        from name in names
        where scalar.Value == name.From
        select new Edit(scalar.At, name.To);

    /// <summary>The least current that a conductor of the run may carry.</summary>
    public double AmpacityOf(WiredRun run) =>
        run.Conductors.Select(c => Install.Answers.Conductors[c.Index].Ampacity?.Value ?? double.NaN).Min();

    /// <summary>The largest current in the run at full output.</summary>
    public double AmpsIn(WiredRun run) =>
        run.Conductors.Select(c => Math.Abs(Install.Answers.State(SystemState.FullOutput).Amps[c.Index].Value)).DefaultIfEmpty(0).Max();

    /// <summary>The last fuse or breaker before a run, by the largest rating of all sources' ways; nothing if one has none.</summary>
    public double RatingBefore(WiredRun run) =>
        (from feed in Wiring.Feeds
         from fed in feed.Conductors
         where fed.Conductor.RunId == run.Id && !fed.Protections.IsEmpty
         select fed.Protections[^1].Rating?.Value ?? double.NaN).DefaultIfEmpty(double.NaN).Max();

    /// <summary>The lowest rating on the way to a run, but for the devices of one run or block; no limit if there is none.</summary>
    public double LowestBefore(WiredRun run, string but) =>
        (from feed in Wiring.Feeds
         from fed in feed.Conductors
         where fed.Conductor.RunId == run.Id
         select fed.Protections.Where(p => p.Id.Split('.')[0] != but)
             .Select(p => p.Rating?.Value ?? double.PositiveInfinity)
             .DefaultIfEmpty(double.PositiveInfinity)
             .Min())
            .DefaultIfEmpty(double.NaN)
            .Max();

    /// <summary>A place to connect to the body, or to what leads there.</summary>
    public string? Ground => Gear.FirstOrDefault(g => g.Kind == "chassis point")?.Id;

    /// <summary>The single end of a run, if it has one there.</summary>
    public static RunEnd? Only(ImmutableArray<RunEnd> ends) => ends.Length == 1 ? ends[0] : null;

    /// <summary>A length in meters as it is written in specs.</summary>
    public static string Long(double meters) => Invariant($"{meters:0.###} m");

    /// <summary>A current as it is written in specs.</summary>
    public static string Ampere(double amps) => Invariant($"{amps:0.###} A");

    private static string Invariant(FormattableString words) => FormattableString.Invariant(words);

    private SourceSpan Stretch(int start, int end) => new(File, start, end - start);

    private string NewLine(SourceSpan at) => "\n" + new string(' ', at.Start - File.LineStart(at.Line));
}
