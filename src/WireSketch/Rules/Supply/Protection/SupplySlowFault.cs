using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A dead short that the fuse does not clear in time.</summary>
internal sealed class SupplySlowFault : Rule
{
    /// <summary>Up to here the adiabatic formula holds (IEC 60364-4-43, from memory), and by then a short must be over.</summary>
    private static readonly Seconds Longest = new(5);

    public override RuleCard Card { get; } = new(
        Id: "supply/slow-fault",
        Severity.Error,
        Title: "A dead short is not cleared in time",
        Why: """
            At the far end of a long thin wire a short draws so little that a large fuse opens late or not at all, while the wire glows. A
            shorter or thicker wire draws more and opens it sooner; a smaller fuse opens at less. It is an error where the heat let through
            is more than the conductor survives, else a warning.
            """,
        new Basis.Reasoning(
            $"computed fault current against the device's published time limits, 5 s at most, and against the conductor's adiabatic "
                + $"limit k²S² (IEC 60364-5-54, annex A)"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 40 Ah }
              lamp: { is: lamp, power: 20 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: lamp.+, wire: 18 AWG red 105 C, length: 100 ft, #! supply/slow-fault
                  fuse: { rating: 15 A, at: 6 in } }
              G1: { from: lamp.-, to: bolt, wire: 18 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 40 Ah }
              lamp: { is: lamp, power: 20 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: lamp.+, wire: 18 AWG red 105 C, length: 100 ft, fuse: { rating: 3 A, at: 6 in } }
              G1: { from: lamp.-, to: bolt, wire: 18 AWG black, length: 12 in }
            """);

    /// <summary>
    /// One finding for a device: the conductor behind it for which it is worst. An oversized fuse is told by its own rule.
    /// </summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var overrated = install.Protections.Where(g => g.IsOverrated).Select(g => g.Conductor.Index).ToHashSet();
        return from fault in install.Answers.Faults
               where !install.IsShorted && fault.Device is { Rating: not null } && !overrated.Contains(fault.Conductor.Index)
               group fault by (fault.Conductor.Index, fault.Device!.Index) into ofBoth
               let strongest = ofBoth.MaxBy(f => f.DeviceAmpsAtFar.Value)!
               where IsLate(strongest) || Burns(strongest)
               group strongest by strongest.Device!.Index into ofDevice
               select Of(
                   install,
                   ofDevice.OrderBy(f => Burns(f) ? 0 : 1).ThenBy(f => f.DeviceAmpsAtFar.Value).ThenBy(f => f.Conductor.Index).First());
    }

    /// <summary>
    /// Where no time limits are known for a device, it is trusted from three and a half times its rating on (common practice, no
    /// published source).
    /// </summary>
    private static bool IsLate(FaultResult fault) =>
        fault.OpensWithin is { } time ? time > Longest : fault.DeviceAmpsAtFar / fault.Device!.Rating!.Value < 3.5;

    private static bool Burns(FaultResult fault) => fault.LetThrough is { } through && through > fault.Withstand;

    private static PrintedValue Energy(double letThrough) => PrintedValue.Of(letThrough, "A2s", $"{Quantity.Digits(letThrough, 2)} A²s");

    private Finding Of(InstalledSystem install, FaultResult fault)
    {
        var run = RunText.Of(install, fault.Conductor);
        var device = fault.Device!;
        var times = Quantity.Digits(fault.DeviceAmpsAtFar / device.Rating!.Value, 2);
        var when = fault.OpensWithin is { } time
            ? (Burns(fault) ? FindingText.Of($"which may take {time:opens within} to open") : $"which may take {time:measured} to open")
            : $"which need not open at all";
        var burns = Burns(fault)
            ? FindingText.Of(
                $"; until then {Energy(fault.LetThrough!.Value):measured} pass and the wire survives {Energy(fault.Withstand):limit}")
            : FindingText.None;
        var smaller = SourceReach.Most(install, device) is { } load ? FuseSizes.AtLeast(load / FuseSizes.Comfortable, device.Style) : null;
        return Report(
            run.Run.Name.At,
            $"a short at the far end of {RunText.Full(install, run)} draws {fault.DeviceAmpsAtFar:fault current}, {times} times the "
                + $"rating of {RunText.Named(device)}, {when}{burns}",
            $"fit a smaller fuse, or make {run.Id} thicker or shorter",
            Burns(fault) ? Severity.Error : Severity.Warning, run.Id, RunText.Subject(device)) with
        {
            Fixes = smaller is { } fits && fits < device.Rating ? RunText.RatingFix(device, fits) : [],
        };
    }
}
