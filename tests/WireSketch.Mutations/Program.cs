using System.Globalization;
using System.Text.Json;
using WireSketch.Mutations;
using WireSketch.Testing;

// dotnet run -c Release --project tests/WireSketch.Mutations -- [--mutants 600] [--seed 1] [--work FOLDER] [--keep]
// Everything that is done stands in the work folder, so that a run that was stopped goes on where it was. --keep writes last-run.json.
var root = Repository.Root;
var kept = Path.Combine(root, "tests/WireSketch.Mutations/last-run.json");
if (args is ["print"])
{
    Console.Write(LastRun.Read(kept)?.Print() ?? "No run has been kept.\n");
    return 0;
}

var wanted = int.Parse(Option("--mutants") ?? "600", CultureInfo.InvariantCulture);
var seed = int.Parse(Option("--seed") ?? "1", CultureInfo.InvariantCulture);
var commit = MutatedTree.Run("git", root, "rev-parse", "HEAD").Output.Trim();
var date = MutatedTree.Run("git", root, "show", "-s", "--format=%cs", "HEAD").Output.Trim();
var work = Option("--work")
    ?? Path.Combine(
        Path.GetTempPath(),
        string.Create(CultureInfo.InvariantCulture, $"wiresketch-mutations-{commit[..10]}-{seed}-{wanted}"));
Directory.CreateDirectory(work);
var finder = new MutantFinder(root);
var tree = new MutatedTree(root, Path.Combine(work, "tree"), finder.Enums);
var runner = new TestRunner(tree, work);

var mutants = Load<Mutant[]>("mutants.json") ?? Keep("mutants.json", Plan());
var classes = Load<TestClass[]>("classes.json") ?? Keep("classes.json", Measure());
var verdictsFile = Path.Combine(work, "verdicts.jsonl");
var done = (File.Exists(verdictsFile) ? File.ReadAllLines(verdictsFile) : [])
    .Select(l => JsonSerializer.Deserialize<Verdict>(l, LastRun.Json)!).ToDictionary(v => v.Mutant.Number);
var reasons = (LastRun.Read(kept)?.Verdicts ?? []).Where(v => v.Reason is not null)
    .ToLookup(v => v.Mutant.Key, v => v.Reason, StringComparer.Ordinal);
var line = new JsonSerializerOptions(LastRun.Json) { WriteIndented = false };
Parallel.ForEach(mutants.Where(m => !done.ContainsKey(m.Number)).ToArray(), new ParallelOptions { MaxDegreeOfParallelism = 2 }, mutant =>
{
    var verdict = runner.Judge(mutant, classes, reasons[mutant.Key].FirstOrDefault());
    lock (done)
    {
        done[mutant.Number] = verdict;
        File.AppendAllText(verdictsFile, JsonSerializer.Serialize(verdict, line) + "\n");
        Console.WriteLine(
            $"{done.Count}/{mutants.Length} {verdict.Outcome} in {verdict.Seconds:0.0} s: {mutant.File}:{mutant.Line} {mutant.Change} "
                + $"{verdict.By}");
    }
});

var run = new LastRun(
    commit,
    seed,
    date,
    [.. done.Values.OrderBy(v => v.Mutant.File, StringComparer.Ordinal).ThenBy(v => v.Mutant.Start).ThenBy(v => v.Mutant.Number)]);
Console.Write(run.Print());
if (args.Contains("--keep"))
{
    run.Save(kept);
}

return 0;

string? Option(string name) => Array.IndexOf(args, name) is >= 0 and var at && at + 1 < args.Length ? args[at + 1] : null;

T? Load<T>(string name)
    where T : class =>
    File.Exists(Path.Combine(work, name)) ? JsonSerializer.Deserialize<T>(File.ReadAllText(Path.Combine(work, name)), LastRun.Json) : null;

T Keep<T>(string name, T value)
{
    File.WriteAllText(Path.Combine(work, name), JsonSerializer.Serialize(value, LastRun.Json));
    return value;
}

// As many of every stage as there are; what does not compile makes way for the next of its stage.
Mutant[] Plan()
{
    var stages = Stage.Of(root);
    var all = stages.Select(s => finder.Shuffled(s, seed)).ToArray();
    foreach (var (stage, of) in stages.Zip(all))
    {
        Console.WriteLine($"{stage.Name}: {of.Length} changes possible");
    }

    var refused = new HashSet<string>(StringComparer.Ordinal);
    tree.Copy();
    for (var round = 1; ; round++)
    {
        var number = 0;
        var chosen = all.SelectMany((of, i) =>
            of.Where(m => !refused.Contains(Id(m))).Take((wanted / stages.Length) + (i < wanted % stages.Length ? 1 : 0)))
            .Select(m => m with { Number = ++number }).ToArray();
        tree.Copy();
        tree.Write(chosen);
        var broken = tree.Build();
        Console.WriteLine($"build {round}: {chosen.Length} mutants, {broken.Count} do not compile");
        if (broken.Count == 0)
        {
            return chosen;
        }

        refused.UnionWith(chosen.Where(m => broken.Contains(m.Number)).Select(Id));
    }
}

static string Id(Mutant m) => string.Create(CultureInfo.InvariantCulture, $"{m.File}|{m.Start}|{m.Length}|{m.Change}");

TestClass[] Measure()
{
    var measured = runner.Classes()
        .AsParallel()
        .AsOrdered()
        .WithDegreeOfParallelism(2)
        .Select(c => runner.Measure(c.Program, c.Name))
        .ToArray();
    foreach (var c in measured.Where(c => !c.Passes))
    {
        Console.WriteLine($"left out, since it fails without a mutant: {c.Name}");
    }

    Console.WriteLine($"{measured.Length} classes of tests, {measured.Sum(c => c.Seconds):0} s of processor time in all");
    return measured;
}
