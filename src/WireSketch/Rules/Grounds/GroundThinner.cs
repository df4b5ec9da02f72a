using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>The return has less copper than the supply.</summary>
internal sealed class GroundThinner : Rule
{
    /// <summary>Room for sizes of the two systems that are sold for each other, such as 1/0 AWG and 50 mm2.</summary>
    private const double Same = 1.08;

    public override RuleCard Card { get; } = new(
        Id: "ground/thinner",
        Severity.Warning,
        Title: "The ground is thinner than the supply",
        Why: """
            All the current that comes in by the supply goes out by the ground, and no fuse protects the ground by itself. A thinner one
            loses more volts than the supply does and heats. Several devices on one ground need the copper of the cable that feeds them all.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: compressor.+, wire: 8 AWG red, length: 8 ft, fuse: { rating: 40 A, at: 8 in } }
              G1: { from: compressor.-, to: bolt, wire: 12 AWG black, length: 12 in } #! ground/thinner
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: compressor.+, wire: 8 AWG red, length: 8 ft, fuse: { rating: 40 A, at: 8 in } }
              G1: { from: compressor.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """);

    /// <summary>Each return conductor against the thinnest place of the supply that feeds all the loads whose current it carries.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var loads = install.Wiring.Loads.Where(l =>
            l is { HasReturn: true, IsTakenAsWired: false, Source: not null, Input.Takes: not CoilDraw }
                && TerminalRoles.IsSourcePlus(l.Source));
        var users = loads.SelectMany(l =>
            l.Return.Select(s => s.Conductor).OfType<Conductor>().Where(c => !c.IsShield).Select(c => (Conductor: c, Load: l)))
            .GroupBy(x => x.Conductor.Index).OrderBy(g => g.Key);
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var user in users)
        {
            var conductor = user.First().Conductor;
            var supply = Thinnest(install, [.. user.Select(u => u.Load)]);
            var copper = install.Copper(conductor);
            if (supply is not null
                && install.Copper(supply) > copper * Same
                && !IsOverloaded(install, conductor)
                && told.Add(conductor.RunId))
            {
                yield return Of(
                    install, RunText.Of(install, conductor), RunText.Of(install, supply), [.. user.Select(u => u.Load.Gear.Id)]);
            }
        }

        foreach (var battery in install.Wiring.Sources.Where(s => s.Source is BatterySource).Skip(1))
        {
            if (Charging(install, battery) is { } link
                && Ground(install, battery).FirstOrDefault(c =>
                    install.Copper(link) > install.Copper(c) * Same && !IsOverloaded(install, c)) is { } thin
                && told.Add(thin.RunId))
            {
                yield return Of(install, RunText.Of(install, thin), RunText.Of(install, link), [battery.Id]);
            }
        }
    }

    /// <summary>The thinnest conductor of the way by which another battery or the alternator charges this one; null if none does.</summary>
    private static Conductor? Charging(InstalledSystem install, SourceTerminals battery)
    {
        var charge = install.Wiring.Sources.Where(s => s.Source is BatterySource or AlternatorSource && s != battery)
            .Select(s => s.Plus.Index)
            .ToHashSet();
        return install.Wiring.Feeds.Where(f => charge.Contains(f.Source.Index))
            .SelectMany(f => f.Conductors.Where(c => c.Far.Index == battery.Plus.Index))
            .Take(1)
            .SelectMany(c => c.Through().Append(c.Conductor))
            .MinBy(c => install.Copper(c));
    }

    /// <summary>The conductors by which the battery's minus reaches the body, by the fewest steps.</summary>
    private static IEnumerable<Conductor> Ground(InstalledSystem install, SourceTerminals battery) =>
        GroundPaths.ToBody(install.Wiring, battery.Minus!).Reverse();

    /// <summary>The thinnest of the conductors that every one of the loads is fed through; the last such, nearest to the loads.</summary>
    private static Conductor? Thinnest(InstalledSystem install, LoadPath[] loads)
    {
        var common = loads.Skip(1)
            .Aggregate(
                (HashSet<int>?)null,
                (seen, l) => Kept(seen, l.Supply.Where(s => s.Conductor is not null).Select(s => s.Conductor!.Index)));
        Conductor? thinnest = null;
        foreach (var step in loads[0].Supply)
        {
            if (step.Conductor is { } conductor
                && common?.Contains(conductor.Index) != false
                && (thinnest is null || install.Copper(conductor) <= install.Copper(thinnest)))
            {
                thinnest = conductor;
            }
        }

        return thinnest;

        static HashSet<int> Kept(HashSet<int>? seen, IEnumerable<int> conductors)
        {
            if (seen is null)
            {
                return [.. conductors];
            }

            seen.IntersectWith(conductors);
            return seen;
        }
    }

    /// <summary>Then that is the graver fault, and it is told.</summary>
    private static bool IsOverloaded(InstalledSystem install, Conductor conductor) =>
        SourceReach.Most(install, conductor) is { } amps
            && install.Answers.Conductors[conductor.Index].Ampacity is { } ampacity
            && amps > ampacity;

    private Finding Of(InstalledSystem install, WiredRun ground, WiredRun supply, string[] loads) => Report(
        RunText.WireAt(ground),
        $"{RunText.Full(install, ground)} takes back what {RunText.Full(install, supply)} brings to {RunText.List(loads)}",
        $"make {new WantedSize(ground.Id, supply.Wire.Size)} or thicker",
        null, [ground.Id, .. loads]).With(ValueRole.Measured, ground.Wire.Size.Area).With(ValueRole.Limit, supply.Wire.Size.Area) with
    {
        Fixes = RunText.SizeFix(ground, supply.Wire.Size),
    };
}
