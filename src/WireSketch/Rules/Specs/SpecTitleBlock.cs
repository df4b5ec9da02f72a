using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Specs;

/// <summary>A title block with gaps.</summary>
internal sealed class SpecTitleBlock : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "spec/title-block",
        Severity.Advice,
        Title: "The customer copy lacks facts",
        Why: """
            The drawing outlives the job: years later somebody needs to know whose car this was, who did the work, and when. Nothing here is
            needed to compute; all of it is needed on paper.
            """,
        new Basis.Practice(),
        Bad: """
            job: { title: Beacon } #! spec/title-block
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """,
        Good: """
            job: { title: Beacon, reference: EX-1, customer: Sample Customer, shop: Quillmarsh Mobile Sound, date: 2026-10-30,
                   vehicle: { description: 2018 Marlow Brindle hatchback } }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var job = install.Spec.Job;
        (string Key, bool Given)[] facts =
        [
            ("reference", job.Reference is not null),
            ("customer", job.Customer is not null),
            ("shop", job.Shop is not null),
            ("date", job.Date is not null),
            ("vehicle: { description: … }", job.Vehicle.Description is not null),
        ];
        var missing = facts.Where(f => !f.Given).Select(f => f.Key).ToArray();
        return missing.Length == 0 || job.Title is not { } title
            ? []
            : [
                Report(
                    title.At,
                    $"the title block lacks {RunText.List(missing)}",
                    $"add {(missing.Length == 1 ? "it" : "them")} under job: before the customer gets a copy",
                    "job")
            ];
    }
}
