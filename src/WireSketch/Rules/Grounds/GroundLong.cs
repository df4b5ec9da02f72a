using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>A ground lead longer than it need be.</summary>
internal sealed class GroundLong : Rule
{
    private static readonly Meters Limit = Meters.FromInches(18);

    public override RuleCard Card { get; } = new(
        Id: "ground/long",
        Severity.Warning,
        Title: "The ground lead is long",
        Why: """
            Every volt lost in the ground lifts the whole device above the body, and the signal with it: whine that follows the engine. Go
            to bare metal close by: 18 in is what careful installers allow. A return that runs back beside the supply to a bar or to the
            battery is another matter, and so are lamps, pumps and motors, whose noise nobody hears.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 150 W, critical: true }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 6 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 6 AWG black, length: 5 ft } #! ground/long
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              inverter: { is: inverter, power: 150 W, critical: true }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 6 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 6 AWG black, length: 14 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from run in install.Wiring.Runs
        where run is { Length: not null, IsTwoWire: false } && run.Length.Value > Limit + new Meters(0.001)
        let ends = run.From.Concat(run.To).ToArray()
        let point = ends.FirstOrDefault(e => TerminalRoles.IsBodyBolt(e.Gear))
        let device = ends.FirstOrDefault(e => !TerminalRoles.IsBodyBolt(e.Gear) && Minds(e.Gear) && e.Shape.Role is TerminalRole.Ground)
        where point is not null && device is not null
        select Report(
            RunText.LengthAt(run),
            $"{RunText.Full(install, run)} goes {RunText.Measure(install, run.LengthTaken):measured} to {point.Gear.Id}; "
                + $"{RunText.Measure(install, Limit):limit} is the most for {device.Gear.Id}",
            $"find bare metal of the body within {RunText.Length(install, Limit)} of {device.Gear.Id}, or run a return of the supply's "
                + $"gauge back to the battery",
            run.Id, device.Gear.Id, point.Gear.Id);

    private static bool Minds(Gear gear) =>
        GroundPaths.IsAudio(gear)
            || TerminalRoles.IsBattery(gear)
            || TerminalRoles.HoldsCharge(gear)
            || IsGroundBlock(gear)
            || gear.PowerInputs.Any(p => p is { IsCritical: true, Takes: ApplianceDraw } or { Takes: ApplianceDraw { IsInverter: true } });

    private static bool IsGroundBlock(Gear gear) =>
        !TerminalRoles.IsVehicleCircuit(gear) && gear.Terminals is [{ Name: "", Role: TerminalRole.Ground }];
}
