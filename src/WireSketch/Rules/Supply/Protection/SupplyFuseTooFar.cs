using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>The first fuse sits too far from the source.</summary>
internal sealed class SupplyFuseTooFar : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/fuse-too-far",
        Severity.Error,
        Title: "The fuse is too far from the source",
        Why: """
            The wire ahead of the fuse is unprotected. If it chafes through there, nothing opens and it burns. Keep that stretch short
            and well covered: 18 in along the wire is the most that careful installers allow.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 14 ft,
                  fuse: { rating: 15 A, at: 3 ft } } #! supply/fuse-too-far
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 14 ft, fuse: { rating: 15 A, at: 12 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        install.Unprotected.Where(s => s.Fault == UnprotectedLengthFault.TooFar).Select(s => Of(install, s));

    private static PrintedValue Inches(double inches) =>
        PrintedValue.Of(Meters.FromInches(inches), Quantity.PrintIn(Meters.FromInches(inches), Meters.Units[3]));

    private Finding Of(InstalledSystem install, UnprotectedLength stretch)
    {
        var run = RunText.Of(install, stretch.Fed.Conductor);
        var device = stretch.Device!;
        var own = run.Run.Protection is { } inline && device.Gear?.Name.At == inline.At ? inline : null;
        var limit = RunText.Length(install, UnprotectedLengths.Limit);
        return Report(
            own?.Distance?.At ?? run.Run.Name.At,
            $"{RunText.Named(device)} sits {RunText.Measure(install, stretch.First!.Value):measured} along the wire from "
            + $"{stretch.Source}; {RunText.Measure(install, UnprotectedLengths.Limit):limit} is the most"
                + $" (33 CFR 183.455(b), for boats, allows {Inches(7)}, or {Inches(40)} where the wire runs in a sheath; 183.460(a) "
                + $"allows {Inches(72)} from a battery)",
            own is null || stretch.Fed.Near != stretch.Fed.Conductor.From
                ? $"add a fuse to {run.Id} within {limit} of {stretch.Source}"
                : $"move it: at: {RunText.Length(install, Quantities.Meters.FromInches(12))}",
            run.Id, device.Id, stretch.Source.Id) with
        {
            Fixes = own?.Distance is { } written && stretch.Fed.Near == stretch.Fed.Conductor.From && stretch.Fed.Distance.Value == 0
                ? [
                    new(
                        $"move the {RunText.Device(device)} of {run.Id}",
                        [new(written.At, RunText.Length(install, Quantities.Meters.FromInches(12)))])
                ]
                : [],
        };
    }
}
