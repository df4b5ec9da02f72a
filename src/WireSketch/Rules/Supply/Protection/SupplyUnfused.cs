using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A conductor that a source can feed without any fuse or breaker between them.</summary>
internal sealed class SupplyUnfused : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/unfused",
        Severity.Error,
        Title: "A supply wire has no fuse between it and the source",
        Why: """
            A battery gives hundreds of amperes into a short, and nothing but a fuse or breaker stops them: the insulation burns along the
            whole wire. Every wire that leaves a source needs a device close to the source, rated for the thinnest wire behind it.
            """,
        new Basis.Published(
            $"33 CFR 183.455(a): a breaker or fuse in each ungrounded current-carrying conductor; written for boats, taken here as good "
                + $"practice"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 14 ft } #! supply/unfused
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 14 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var faults = install.Answers.Faults.ToLookup(f => f.Conductor.Index);
        return install.Unprotected.Where(s => s.Fault == UnprotectedLengthFault.Unfused)
            .Select(s => Of(install, s, faults[s.Fed.Conductor.Index].FirstOrDefault()));
    }

    private Finding Of(InstalledSystem install, UnprotectedLength stretch, FaultResult? fault)
    {
        var conductor = stretch.Fed.Conductor;
        var run = RunText.Of(install, conductor);
        var ampacity = install.Answers.Conductors[conductor.Index].Ampacity;
        var burns = fault is null
            ? FindingText.None
            : $"; a short at its far end draws about "
                + $"{fault.Far:measured}{(ampacity is { } a ? FindingText.Of($", and it carries {a:limit}") : FindingText.None)}";
        var behind = stretch.Device is { } device
            ? FindingText.Of(
                $"{run.Id} feeds {RunText.List(stretch.Unprotected.Select(t => t.Id))} without any fuse, and {RunText.Named(device)} "
                    + $"comes only after {RunText.Measure(install, stretch.First!.Value):distance}")
            : $"nothing protects {RunText.Full(install, run)} between {stretch.Source} and "
                + $"{RunText.List(stretch.Unprotected.Select(t => t.Id))}";
        var rating = ampacity is { } most ? FuseSizes.For(SourceReach.Most(install, conductor) ?? new(0), most) : null;
        var at = RunText.Length(install, Quantities.Meters.FromInches(12));
        return Report(
            run.Run.Name.At,
            $"{behind}{burns}",
            Help(stretch, run.Id, rating is { } r ? $"fuse: {{ rating: {r}, at: {at} }}" : $"fuse: {{ rating: auto, at: {at} }}"),
            run.Id,
            stretch.Source.Id);
    }

    private static string Help(UnprotectedLength stretch, string run, string fuse) =>
        stretch.Fed.Conductor.From == stretch.Fed.Near || stretch.Fed.Conductor.From.Gear is null
            ? stretch.Unprotected.Length == 1
                && stretch.Unprotected[0].Gear?.Id == stretch.Fed.Far.Gear?.Id
                && TerminalRoles.IsBattery(stretch.Unprotected[0].Gear)
                ? $"{run} joins two batteries and needs a fuse near each: split it at a fuse of its own, and add {fuse} at both ends"
                : $"add {fuse} to {run}"
            : $"put a fuse on {run} close to {stretch.Source}; write {run} from that end and add {fuse}";
}
