using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Topology;

namespace WireSketch.Sizing;

/// <summary>
/// A rule that copper mends and that is broken for something: a device where the rule is about what the device gets, else a run.
/// </summary>
internal sealed record BrokenRule(string Rule, string For, Finding Finding);

/// <summary>The whole network with some choice of sizes, and which rules it breaks that a thicker wire would mend.</summary>
/// <param name="Choices">The sizes.</param>
/// <param name="Install">What they lead to.</param>
/// <param name="Broken">The rules.</param>
internal sealed record SizingTrial(SizeChoices Choices, InstalledSystem Install, ImmutableArray<BrokenRule> Broken)
{
    /// <summary>Rules about what a device gets: one finding tells of several devices.</summary>
    private static readonly ImmutableHashSet<string> OfDevices = ["supply/drop", "supply/insufficient"];

    /// <summary>Rules that a thicker wire can satisfy.</summary>
    private static readonly ImmutableHashSet<string> MendedByCopper =
    [
        .. OfDevices, "supply/fuse-above-wire", "supply/conductor-reduction", "supply/gauge-change", "supply/insulation-too-low",
        "supply/slow-fault",
        "ground/thinner", "ground/overloaded", "ground/factory-lead", "load/wire-overloaded", WireLoss,
    ];

    /// <summary>Only an advice, but a choice that is free should follow it.</summary>
    private const string WireLoss = "load/wire-loss";

    private static readonly ImmutableArray<Rule> Mended = [.. RuleBook.All.Where(r => MendedByCopper.Contains(r.Card.Id))];

    /// <summary>Every state has an operating point.</summary>
    public bool IsSolved => Install.Answers.States.All(s => s.IsSolved);

    public static SizingTrial Of(Spec spec, SizeChoices choices)
    {
        var wiring = WiringResolver.Resolve(spec, choices).Value;
        var install = new InstalledSystem(spec, wiring, ElectricalSolver.Solve(wiring));
        var gear = spec.Gear.Select(g => g.Id).ToHashSet(StringComparer.Ordinal);
        var findings = Finding.InOrder(Mended.SelectMany(r => r.Check(install))
            .Where(f => f.Severity > Severity.Advice || f.Rule == WireLoss));
        return new(
            choices,
            install,
            [
                .. findings.SelectMany(f =>
                    (OfDevices.Contains(f.Rule) ? f.Subjects.Where(gear.Contains) : f.Subjects.Take(1)).Select(
                        s => new BrokenRule(f.Rule, s, f)))
            ]);
    }

    /// <summary>A rule that is broken here for something for which it was not broken before; null if there is none.</summary>
    public string? NewIn(SizingTrial before)
    {
        var known = before.Broken.Select(b => (b.Rule, b.For)).ToHashSet();
        return Broken.FirstOrDefault(b => !known.Contains((b.Rule, b.For)))?.Rule;
    }

    /// <summary>
    /// The runs that a finding is about: those it names, for a device those that carry its current, for a channel those of its speakers.
    /// </summary>
    public IEnumerable<string> Candidates(Finding finding) =>
        finding.Subjects.SelectMany(s => Install.Wiring.RunsById.ContainsKey(s)
            ? [s]
            : Install.Wiring.Loads.Where(l => l.Gear.Id == s)
                .SelectMany(l => l.Supply.Concat(l.Return))
                .Select(p => p.Conductor?.RunId)
                .OfType<string>()
                .Concat(Install.Answers.Channels.Where(c => c.Id == s)
                    .SelectMany(c =>
                        c.Coils.Select(k => ChannelWiring.RunAtCoil(Install.Wiring, k.Speaker, k.Coil))
                            .Append(ChannelWiring.RunOf(Install.Wiring, c)))
                    .OfType<WiredRun>()
                    .Select(r => r.Id)));

    /// <summary>Volts won for a liter more of copper; where no current flows, the shortest run counts most.</summary>
    public double Worth(string id, WireSize size)
    {
        var run = Install.Wiring.RunsById[id];
        var (now, then) = (run.Wire.Size.Area.Value, size.Area.Value);
        return (Amps(run).Value + 1e-6) * ((1 / now) - (1 / then)) / (then - now);
    }

    /// <summary>The highest current in a run, in whatever state it flows.</summary>
    public Amps Amps(WiredRun run) =>
        new(run.Conductors.SelectMany(c => Install.Answers.States.Select(s => Math.Abs(s.Amps[c.Index].Value))).DefaultIfEmpty(0).Max());
}
