using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Conductors;

/// <summary>One path to one load in two gauges.</summary>
internal sealed class SupplyGaugeChange : Rule
{
    /// <summary>A short tail at a device whose terminals take no thicker cable is usual (common practice, no published source).</summary>
    private static readonly Meters Tail = Meters.FromInches(18);

    public override RuleCard Card { get; } = new(
        Id: "supply/gauge-change",
        Severity.Warning,
        Title: "The cable gets thinner half way",
        Why: """
            A thick cable that goes on as a thin one wastes its copper: the thin part decides what is lost and what the fuse may be. Either
            the thin part was forgotten, or the thick one was not needed. Branches at a block are another matter.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              joint: { is: connector, cavities: 1, gauge: 4 AWG }
              pump: { is: pump, current: 18 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: joint.1, wire: 6 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              P2: { from: joint.1, to: pump.+, wire: 10 AWG red, length: 6 ft } #! supply/gauge-change
              G1: { from: pump.-, to: bolt, wire: 6 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              joint: { is: connector, cavities: 1, gauge: 4 AWG }
              pump: { is: pump, current: 18 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: joint.1, wire: 6 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              P2: { from: joint.1, to: pump.+, wire: 6 AWG red, length: 6 ft }
              G1: { from: pump.-, to: bolt, wire: 6 AWG black, length: 12 in }
            """);

    /// <summary>One finding for a thinner run; what is dangerous about it is told by the rule on reductions.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from guard in install.Protections
        where guard.Thicker is not null && !guard.IsOverrated && guard.Conductor.Length > Tail
        let before = guard.Fed.Before!.Conductor
        where before.Index == guard.Thicker!.Index && IsAlone(install, before, guard)
        group guard by guard.Conductor.RunId into ofRun
        let first = ofRun.First()
        let run = RunText.Of(install, first.Conductor)
        let thick = RunText.Of(install, first.Thicker!)
        select Report(
            RunText.WireAt(run),
            $"{RunText.Full(install, thick)} goes on as {RunText.Full(install, run)} to the same load, with no device between",
            $"make {new WantedSize(run.Id, thick.Wire.Size)} as well, or {thick.Id} {RunText.Size(run)}",
            run.Id, thick.Id).With(ValueRole.Measured, run.Wire.Size.Area).With(ValueRole.Limit, thick.Wire.Size.Area) with
        {
            Fixes = RunText.SizeFix(run, thick.Wire.Size),
        };

    /// <summary>Whether all that comes through the thick wire goes on in the thin one: nothing else is wired where they meet.</summary>
    private static bool IsAlone(InstalledSystem install, Conductor thick, ConductorProtection thin)
    {
        var wiring = install.Wiring;
        var meet = thick.From == thin.Fed.Near
            || wiring.NetOf[thick.From.Index] == wiring.NetOf[thin.Fed.Near.Index] && IsJoined(wiring, thick.From, thin.Fed.Near)
            ? thick.From
            : thick.To;
        return wiring.Graph.From(meet).Over(Follow.None, Pass.All).Terminals().SelectMany(t => wiring.ConductorsAt[t.Index])
            .All(c => c.Index == thick.Index || c.Index == thin.Conductor.Index);
    }

    private static bool IsJoined(Wiring wiring, Terminal a, Terminal b) => wiring.LinksAt[a.Index].Any(l => l.Other(a).Index == b.Index);
}
