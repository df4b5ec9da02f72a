using WireSketch.Electrical;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Documents.Reports;

/// <summary>What conductors and the ways through devices lose in one state.</summary>
internal sealed class StepDrops(InstalledSystem install, StateResult state)
{
    private const string Solved = "the network solved, from its first end to its second";

    /// <summary>A conductor that carries current.</summary>
    public Calculation Of(Conductor c)
    {
        var metal = ConductorChapters.IsClad(c) ? Tables.Metal.CopperCladAluminum : Tables.Metal.Copper;
        return new ReportBuilder().Taken("I", "current", state.Amps[c.Index], Solved, ReportBuilder.FineDigits)
            .Taken("R20", "wire at 20 C", install.Answers.Conductors[c.Index].Resistance20, "chapter Resistance of the conductors")
            .Solved<Celsius>(
                "t",
                "temperature",
                state.Temperatures[c.Index],
                "as in chapter Resistance of the conductors, with the current of this state")
            .Gives(
                "R",
                "at work",
                state.Resistances[c.Index]!.Value,
                $"R20·(1 + {Quantity.Digits(metal.Alpha, 6)}·(t − 20)) + {(c.IsJumper && c.Length.Value == 0 ? "1" : "2")}·R_t")
            .Gives("ΔU", "lost", Across(c.From, c.To), "I·R")
            .Gives("P", "heat", Heat(state.Amps[c.Index], Across(c.From, c.To)), "I·ΔU")
            .Of(c.Id);
    }

    /// <summary>A fuse, contact, diode, lead or piece of the body that carries current.</summary>
    public Calculation Of(InternalConnection link)
    {
        var (ohms, basis) = ConnectionProperties.Of(link);
        var amps = state.LinkAmps[link.Index];
        var lost = Across(link.A, link.B);
        var w = new ReportBuilder().Taken("I", "current", amps, Solved, ReportBuilder.FineDigits)
            .Taken("R", "resistance", ohms, $"default: {basis}");
        if (link.Kind == ConnectionKind.Diode)
        {
            w.Taken(
                "U_d",
                "drop of the diode",
                link.Drop ?? Assume.DiodeDrop.Value,
                link.Join is { Drop: { } drop } ? ReportBuilder.Place(drop.At) : $"default: {Assume.DiodeDrop}");
        }

        return w.Gives("ΔU", "lost", lost, link.Kind == ConnectionKind.Diode ? "U_d + I·R" : "I·R")
            .Gives("P", "heat", Heat(amps, lost), "I·ΔU")
            .Of(link.Id);
    }

    /// <summary>What is lost step by step on a way.</summary>
    public IEnumerable<(string Of, Volts Value)> Along(IEnumerable<PathStep> steps) => steps
        .Where(s => s.Conductor is not null || s.Link is { Kind: not ConnectionKind.Joint })
        .Select(s => (s.Conductor?.Id ?? s.Link!.Id, Across(s.Enters, s.Leaves)));

    /// <summary>What is lost on the way back, the vehicle's body and the battery's lead included.</summary>
    public IEnumerable<(string Of, Volts Value)> Return(LoadPath path, Terminal source)
    {
        foreach (var step in Along(path.Return))
        {
            yield return step;
        }

        var ends = path.Return.IsEmpty ? path.Minus : path.Return[^1].Leaves;
        var home = install.Wiring.ReturnOf(source);
        if (ends.Index != home.Index)
        {
            yield return (
                $"from {(ends.Gear is null ? "the body" : ends.Id)} to {(home.Gear is null ? "the body" : home.Id)}",
                Across(ends, home));
        }
    }

    private Volts Across(Terminal a, Terminal b) => state.Volts[a.Index] is { } x && state.Volts[b.Index] is { } y ? x - y : new(0);

    private static Watts Heat(Amps amps, Volts volts) => new(amps.Value * volts.Value);
}
