using System.Diagnostics;
using System.Globalization;
using System.Text;
using WireSketch.Electrical.Solver;
using WireSketch.Topology;

namespace WireSketch.Tests.Electrical.Solver;

/// <summary>
/// The circuit simulator ngspice (Debian package ngspice), where it is installed: decks for our circuits, and what it makes of them.
/// </summary>
internal static class NgSpice
{
    public static string? Program { get; } = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, "ngspice")).FirstOrDefault(File.Exists);

    /// <summary>Skips the test, with the reason, where the simulator is not installed.</summary>
    public static void Need() =>
        Assert.SkipWhen(Program is null, "ngspice is not on the PATH: install the Debian package ngspice to compare with it.");

    /// <summary>Runs a deck and gives the values it printed; null if it found no solution.</summary>
    public static Dictionary<string, double>? Run(string deck)
    {
        var folder = Directory.CreateTempSubdirectory("wiresketch-ngspice-");
        try
        {
            File.WriteAllText(Path.Combine(folder.FullName, "deck.cir"), deck);
            using var process = Process.Start(new ProcessStartInfo(Program!, ["-b", "deck.cir"])
            {
                WorkingDirectory = folder.FullName,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
            var error = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();

            // The exit status is 0 even after a failed operating point. The last method that it tries then, a transient, does not solve
            // these.
            var told = error.Result;
            if (told.Contains("failed", StringComparison.OrdinalIgnoreCase))
            {
                return null;
            }

            Assert.False(told.Contains("Error", StringComparison.Ordinal), told);
            return Values(output);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>
    /// Volts by node and amps by branch of a direct-current circuit. Nodes that a branch of no resistance joins are one in the deck: with a
    /// source of 0 V between them the simulator at times leaves one of them at nothing. The current of such a branch is not a number.
    /// </summary>
    /// <param name="circuit">The circuit.</param>
    /// <param name="guess">Where it starts to look, by node; null to let it start from nothing.</param>
    public static (double[] Volts, double[] Amps)? Solve(DcCircuit circuit, Func<int, double>? guess)
    {
        var deck = new StringBuilder("* compared with our own solver\n.options reltol=1e-12 abstol=1e-12 vntol=1e-13 itl1=500\n");
        var prints = new StringBuilder();
        var merged = new UnionFind(circuit.Nodes);
        foreach (var b in circuit.Branches.Where(b => b.IsShort))
        {
            merged.Join(b.A, b.B);
        }

        for (var i = 0; i < circuit.Branches.Count; i++)
        {
            var b = circuit.Branches[i];
            prints.Append(b.IsShort ? "" : Write(deck, b with { A = merged.Root(b.A), B = merged.Root(b.B) }, i));
        }

        for (var n = 1; guess is not null && n < circuit.Nodes; n++)
        {
            if (merged.Root(n) == n)
            {
                deck.Append(CultureInfo.InvariantCulture, $".nodeset v(n{n})={guess(n):R}\n");
            }
        }

        deck.Append(".control\nset numdgt=15\nop\nprint all\n").Append(prints).Append("quit\n.endc\n.end\n");
        if (Run(deck.ToString()) is not { } values)
        {
            return null;
        }

        var volts = Enumerable.Range(0, circuit.Nodes).Select(merged.Root).Select(n => n == 0 ? 0 : values[$"n{n}"]).ToArray();
        var amps = circuit.Branches.Select((b, i) =>
            b.IsShort ? double.NaN : values.TryGetValue($"@r{i}[i]", out var r) ? r : values[$"vm{i}#branch"])
            .ToArray();
        return (volts, amps);
    }

    private static string Node(int n) => n == 0 ? "0" : "n" + n.ToString(CultureInfo.InvariantCulture);

    /// <summary>Writes a branch; elements without a current of their own get an ammeter of 0 V before them.</summary>
    private static string Write(StringBuilder deck, Branch b, int i)
    {
        var (a, c) = (Node(b.A), Node(b.B));
        var u = $"V(m{i},{c})";
        string N(double x) => x.ToString("R", CultureInfo.InvariantCulture);
        string law;
        switch (b.Kind)
        {
            case BranchKind.Resistor:
                deck.Append(CultureInfo.InvariantCulture, $"R{i} {a} {c} {N(b.Ohms)}\n");
                return $"print @r{i}[i]\n";
            case BranchKind.Source:
                deck.Append(CultureInfo.InvariantCulture, $"R{i} {a} m{i} {N(b.Ohms)}\nVe{i} m{i} {c} {N(b.Value)}\n");
                return $"print @r{i}[i]\n";
            case BranchKind.Battery:
                law = $"({u} < {N(b.Value)}) ? ({u} - {N(b.Value)})/{N(b.Ohms)} : ({u} - {N(b.Value)})/{N(b.Limit)}";
                break;
            case BranchKind.Regulated:
                law = $"-min({N(double.IsFinite(b.Limit) ? b.Limit : 1e9)},max(0,({N(b.Value)}-{u})/{N(b.Ohms)}))";
                break;
            case BranchKind.Current:
                law = b.Limit > 0 ? $"{N(b.Value)}*min(1,max(0,{u}/{N(b.Limit)}))" : N(b.Value);
                break;
            case BranchKind.Power:
                law = $"{N(b.Value)}/max({u},2)";
                break;
            default:
                law = $"1e-9*{u}+max(0,({u}-{N(b.Value)})/{N(b.Ohms)})";
                break;
        }

        deck.Append(CultureInfo.InvariantCulture, $"Vm{i} {a} m{i} 0\nB{i} m{i} {c} I={{{law}}}\n");
        return "";
    }

    private static Dictionary<string, double> Values(string output)
    {
        var values = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var line in output.Split('\n'))
        {
            var parts = line.Split(" = ", 2);
            if (parts.Length == 2 && double.TryParse(parts[1].Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value))
            {
                var name = parts[0].Trim().ToLowerInvariant();
                values[name.StartsWith("v(", StringComparison.Ordinal) && name.EndsWith(')') ? name[2..^1] : name] = value;
            }
        }

        return values;
    }
}
