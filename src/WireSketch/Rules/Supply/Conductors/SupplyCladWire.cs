using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Rules.Supply.Conductors;

/// <summary>Copper-clad aluminum treated as if it were copper.</summary>
internal sealed class SupplyCladWire : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/clad-wire",
        Severity.Warning,
        Title: "Copper-clad wire is fused as if it were copper",
        Why: """
            Copper-clad aluminum of a gauge carries about as much as copper two gauges thinner, though it looks the same. A fuse chosen by
            the printed gauge is too large for it. Go two gauges up, or fuse it for the thinner copper.
            """,
        new Basis.Published(
            $"ASTM B566: wire with 10 % of copper has at least 62.9 % of copper's conductivity, two AWG steps; 33 CFR 183.425(a) allows "
                + $"copper only on boats"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              compressor: { is: motor, current: 40 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: compressor.+, wire: 8 AWG red CCA, length: 9 ft, #! supply/clad-wire
                  fuse: { rating: 70 A, at: 8 in } }
              G1: { from: compressor.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              compressor: { is: motor, current: 40 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: compressor.+, wire: 8 AWG red CCA, length: 9 ft, fuse: { rating: 50 A, at: 8 in } }
              G1: { from: compressor.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from guard in install.Protections
        where guard.IsOverrated && guard.IsBlamedOnCladding
        group guard by guard.Conductor.RunId into ofRun
        select Of(install, ofRun.MinBy(g => (g.Answer.Ampacity!.Value.Value, g.Conductor.Index))!);

    private Finding Of(InstalledSystem install, ConductorProtection guard)
    {
        var run = RunText.Of(install, guard.Conductor);
        var ampacity = guard.Answer.Ampacity!.Value;
        var load = SourceReach.Most(install, guard.Device) ?? new Amps(0);
        var fits = FuseSizes.For(load, ampacity, guard.Device.Style);
        var thicker = WireSizes.AtLeast(run.Wire.Size.Area.Value / Metal.CopperCladAluminum.ShareOfCopper.Value, run.Wire.Size);
        return Report(
            RunText.WireAt(run),
            $"{RunText.Full(install, run)} carries {ampacity:limit}, not the {WireSizes.AsCopper(guard.Answer):as copper} of copper, "
                + $"and {RunText.Named(guard.Device, "measured")} lets through more",
            $"{(fits is { } f ? $"fit {f}, " : "")}{(fits is null ? "" : "or ")}make {run.Id} "
                + $"copper{(thicker is { } t ? $" or {t} CCA" : "")}",
            run.Id, RunText.Subject(guard.Device)) with
        {
            Fixes = fits is { } rating ? RunText.RatingFix(guard.Device, rating) : thicker is { } size ? RunText.SizeFix(run, size) : [],
        };
    }
}
