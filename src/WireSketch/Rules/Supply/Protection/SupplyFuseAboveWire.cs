using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A fuse that lets through more than its wire carries.</summary>
internal sealed class SupplyFuseAboveWire : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/fuse-above-wire",
        Severity.Error,
        Title: "The fuse is rated above what the wire carries",
        Why: """
            A fuse protects the wire, not the device. If its rating is above the wire's allowable current, the wire overheats before the
            fuse opens. The next standard rating above the allowable current is only warned of: some codes allow it.
            """,
        new Basis.Published(
            $"33 CFR 183.425, Table 5 with its notes (allowable amperage of conductors); 183.455(c)(1) would allow a device of 150 % of "
                + $"it on boats"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 18 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 12 AWG red, length: 8 ft,
                  fuse: { rating: 80 A, at: 8 in } } #! supply/fuse-above-wire
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 18 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 25 A, at: 8 in } }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    /// <summary>One finding for a device: the conductor behind it that carries least.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var guards = install.Protections.Where(g => g.IsOverrated && !g.IsBlamedOnCladding).ToArray();
        var devices = guards.Select(g => g.Device.Index).ToHashSet();
        return from guard in guards.Where(g => g.Thicker is null)
            .Concat(install.ProtectionsAhead.Where(g => g.IsOverrated && !g.IsBlamedOnCladding && !devices.Contains(g.Device.Index)))
               group guard by guard.Device.Index into ofDevice
               select Of(install, ofDevice.MinBy(g => (g.Answer.Ampacity!.Value.Value, g.Conductor.Index))!);
    }

    private Finding Of(InstalledSystem install, ConductorProtection guard)
    {
        var run = RunText.Of(install, guard.Conductor);
        var ampacity = guard.Answer.Ampacity!.Value;
        var nextUp = FuseSizes.AtLeast(ampacity + new Amps(1e-6), null) is { } next && guard.Rating <= next;
        var load = SourceReach.Most(install, guard.Device) ?? new Amps(0);
        var fits = FuseSizes.For(load, ampacity, guard.Device.Style);
        var wire = WireSizes.Carrying(guard.Rating, guard.Answer);
        var assumed = guard.Conductor.Wire.InsulationIsAssumed && guard.Conductor.Wire.Material == ConductorMaterial.Copper
            ? FindingText.Of($"; insulation for {guard.Conductor.Wire.Insulation:insulation} is assumed, as the wire does not say")
            : FindingText.None;
        return Report(
            RunText.RatingAt(guard.Device),
            $"{RunText.Named(guard.Device, "measured")} is above the {ampacity:limit} that {RunText.Full(install, run)} carries by "
            + $"{guard.Answer.AmpacityBasis}"
                + $" ({new Share(1.5)} of the table's value, which 33 CFR 183.455(c)(1) allows on boats, would be "
                + $"{(guard.Answer.TableAmpacity ?? ampacity) * 1.5}){assumed}",
            fits is { } rating ? FindingText.Of(
                $"fit {rating}{(wire is { } w ? FindingText.Of($", or make {new WantedSize(run.Id, w)}") : FindingText.None)}")
                : wire is { } thicker ? FindingText.Of($"make {new WantedSize(run.Id, thicker)}: the load takes {load}")
                : FindingText.Of($"divide the load"),
            nextUp ? Severity.Warning : Severity.Error, RunText.Subject(guard.Device), run.Id) with
        {
            Fixes = fits is { } f ? RunText.RatingFix(guard.Device, f) : wire is { } size ? RunText.SizeFix(run, size) : [],
        };
    }
}
