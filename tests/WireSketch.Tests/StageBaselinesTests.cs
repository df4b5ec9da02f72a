using System.Text;
using WireSketch.Electrical;
using WireSketch.Quantities;
using WireSketch.Testing;
using WireSketch.Topology;

namespace WireSketch.Tests;

/// <summary>
/// The resolved wiring and the electrical results of three shipped specs, as committed: a difference shows which stage moved.
/// </summary>
public sealed class StageBaselinesTests
{
    public static TheoryData<string> Specs => ["one-amplifier", "two-batteries", "camper"];

    [Theory]
    [MemberData(nameof(Specs))]
    public void The_wiring_is_as_committed(string name)
    {
        var wiring = Of(name).Wiring;
        var text = new StringBuilder("terminals\n");
        foreach (var t in wiring.Terminals)
        {
            text.Append(Invariant($"  {t.Id} ({t.Role}) in net {wiring.NetOf[t.Index].Id}\n"));
        }

        text.Append("conductors\n");
        foreach (var c in wiring.Conductors)
        {
            text.Append(Invariant($"  {c.Id} {c.Kind}: {c.From.Id} to {c.To.Id}, {c.Wire.SizeWords} {c.Wire.Material} {c.Wire.Insulation}, "))
                .Append(Invariant($"{c.Length.Value:R} m, zone {c.ZoneId ?? "unknown"}\n"));
        }

        text.Append("connections inside devices\n");
        foreach (var l in wiring.Links)
        {
            text.Append(Invariant($"  {l.Id} {l.Kind}: {l.A.Id} to {l.B.Id}{(l.Rating is { } r ? $", {r}" : "")}\n"));
        }

        text.Append("loads\n");
        foreach (var l in wiring.Loads)
        {
            text.Append(Invariant($"  {l.Gear.Id} from {l.Source?.Id ?? "nothing"}: {Steps(l.Supply)}; back {Steps(l.Return)}\n"));
        }

        text.Append("what a source feeds\n");
        foreach (var f in wiring.Feeds)
        {
            foreach (var c in f.Conductors)
            {
                text.Append(Invariant(
                    $"  {f.Source.Id}: {c.Conductor.Id} after {c.Distance.Value:R} m behind {Join(c.Protections.Select(p => p.Id))}\n"));
            }
        }

        Baseline.Match($"tests/WireSketch.Tests/Stages/{name}.wiring.txt", text.ToString());
    }

    /// <summary>Six digits: more than a paper prints, fewer than the solver leaves open.</summary>
    [Theory]
    [MemberData(nameof(Specs))]
    public void The_results_are_as_committed(string name)
    {
        var (wiring, answers) = Of(name);
        var text = new StringBuilder();
        foreach (var s in answers.States)
        {
            text.Append(Invariant($"{s.State}{(s.IsSolved ? "" : ", not solved")}\n"));
            text.Append(string.Concat(wiring.Terminals.Where(t => s.Volts[t.Index] is not null)
                .Select(t => $"  {t.Id} {Print(s.Volts[t.Index]!.Value)}\n")));
            text.Append(string.Concat(wiring.Conductors.Where(c => s.Amps[c.Index].Value != 0)
                .Select(c => $"  {c.Id} {Print(s.Amps[c.Index])} at {Print(s.Temperatures[c.Index])}\n")));
            text.Append(string.Concat(s.Loads.Select(l =>
                $"  {l.Path.Gear.Id} takes {Print(l.Amps)}, loses {Print(l.SupplyDrop)} and {Print(l.ReturnDrop)}\n")));
        }

        text.Append("conductors\n")
            .Append(string.Concat(answers.Conductors.Select(c =>
                $"  {c.Conductor.Id} may carry {(c.Ampacity is { } a ? Print(a) : "unknown")}\n")));
        text.Append("faults\n")
            .Append(string.Concat(answers.Faults.Select(f =>
                $"  {f.Conductor.Id}: {Print(f.Near)} to {Print(f.Far)}, {f.Device?.Id ?? "no device"} opens within "
                    + $"{(f.OpensWithin is { } t ? Print(t) : "no time")}\n")));
        text.Append("channels\n")
            .Append(string.Concat(answers.Channels.Select(c =>
                $"  {c.Gear.Id}.{c.Channel}: {(c.Loaded is { } z ? Print(z) : "no load")}, "
                    + $"{(c.Power is { } p ? Print(p) : "unknown power")}\n")));
        var energy = answers.Energy;
        text.Append(Invariant($"energy\n  demand {Print(energy.AverageDemand)} and {Print(energy.PeakDemand)}, asleep {Print(energy.StandbyCurrent)}, "))
            .Append(Invariant($"usable {Print(energy.UsableCharge)}\n"));
        Baseline.Match($"tests/WireSketch.Tests/Stages/{name}.results.txt", text.ToString());
    }

    private static (Wiring Wiring, ElectricalResults Answers) Of(string name)
    {
        var install = Compiler.Compile(ShippedSpecs.Open($"specs/{name}.wsk.yaml"), ShippedSpecs.Files).Install!;
        return (install.Wiring, install.Answers);
    }

    private static string Steps(IEnumerable<PathStep> steps) => Join(steps.Select(s => s.Conductor?.Id ?? s.Link!.Id));

    private static string Join(IEnumerable<string> ids) => string.Join(", ", ids) is { Length: > 0 } some ? some : "nothing";

    private static string Print<T>(T value)
        where T : struct, IQuantity<T> => Quantity.Print(value, 6);

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
