using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Rules.Energies;
using WireSketch.Rules.Grounds;
using WireSketch.Rules.Loads;
using WireSketch.Rules.Routes;
using WireSketch.Rules.Signals;
using WireSketch.Rules.Sources;
using WireSketch.Rules.Specs;
using WireSketch.Rules.Supply;
using WireSketch.Rules.TurnOns;
using WireSketch.Text;

namespace WireSketch.Rules;

/// <summary>All rules, and what they find.</summary>
public static class RuleBook
{
    /// <summary>Every rule, ordered by group as the reference page shows them.</summary>
    public static ImmutableArray<Rule> All { get; } = [.. SupplyRules, .. GroundRules, .. LoadRules, .. SignalRules, .. TurnOnRules, .. SourceRules, .. EnergyRules, .. RouteRules, .. SpecRules];

    /// <summary>
    /// What is to be said about every finding there is: of the rules, of acceptances, and of the language itself, in the order in
    /// which the reference page shows them.
    /// </summary>
    public static ImmutableArray<RuleCard> Cards { get; } =
        [.. All.Select(r => r.Card), Acceptances.Card, .. LanguageFindings.All.Select(f => new RuleCard(f.Id, Severity.Error, f.Title, f.Why, new Basis.Reasoning("the rules of the language"), f.Bad, f.Good))];

    /// <summary>The card of an id; null if there is none of that name.</summary>
    public static RuleCard? Find(string id) => Cards.FirstOrDefault(c => c.Id == id);

    /// <summary>The id that was probably meant: of like letters, or of another group; null if none is near.</summary>
    public static string? NearestTo(string id) =>
        Nearest.To(id, Cards.Select(c => c.Id))
        ?? (id.Split('/')[^1] is { Length: > 2 } slug ? Cards.Select(c => c.Id).FirstOrDefault(c => c.EndsWith("/" + slug, StringComparison.Ordinal)) ?? NearestSlug(slug) : null);

    private static string? NearestSlug(string slug) =>
        Nearest.To(slug, Cards.Select(c => c.Id.Split('/')[1])) is { } near ? Cards.Select(c => c.Id).First(c => c.EndsWith("/" + near, StringComparison.Ordinal)) : null;

    private static ImmutableArray<Rule> SupplyRules =>
    [
        new Missing(),
        new DemandUnknown(),
        new Reversed(),
        new Shorted(),
        new Unfused(),
        new FuseTooFar(),
        new FedFromBothEnds(),
        new FuseAboveWire(),
        new ReductionUnprotected(),
        new FuseBelowLoad(),
        new FuseBelowSurge(),
        new FuseBelowDevice(),
        new UnusualRating(),
        new RatingUnknown(),
        new HolderMismatch(),
        new AutoReset(),
        new BreakingCapacity(),
        new BackedUp(),
        new SlowFault(),
        new NotSelective(),
        new Drop(),
        new Starved(),
        new CladWire(),
        new GaugeChange(),
        new SignalCable(),
        new TerminalTooSmall(),
        new ContactOverloaded(),
        new TapOverloaded(),
        new IsolatorReversed(),
        new CoilReversed(),
        new UnevenParallel(),
        new OpenBreaker(),
        new InsulationTooLow(),
    ];

    private static ImmutableArray<Rule> GroundRules =>
    [
        new GroundMissing(),
        new ThroughShield(),
        new ThinnerReturn(),
        new OverloadedReturn(),
        new LongGround(),
        new BadSurface(),
        new GroundsApart(),
        new FactoryGroundLead(),
        new SharedGround(),
        new FusedReturn(),
        new CrowdedPoint(),
    ];

    private static ImmutableArray<Rule> LoadRules =>
    [
        new BelowMinimum(),
        new BridgedBelowMinimum(),
        new BridgeSides(),
        new AboveUseful(),
        new CoilOverpowered(),
        new CoilOpposed(),
        new CoilOpen(),
        new OutputShorted(),
        new OutputsTied(),
        new OutputGrounded(),
        new Uneven(),
        new NoHighPass(),
        new LowPassMissing(),
        new SubsonicMissing(),
        new FiltersCross(),
        new BoostRisky(),
        new WireLoss(),
        new WireOverloaded(),
        new LineOutput(),
        new LimitUnknown(),
    ];

    private static ImmutableArray<Rule> SignalRules =>
    [
        new SignalUnconnected(),
        new WrongLevel(),
        new LevelHigh(),
        new LevelLow(),
        new LevelUnknown(),
        new Swapped(),
        new BandMissing(),
        new OutputsJoined(),
        new OneSideOnly(),
        new SignalLoop(),
        new BesideSupply(),
        new ManyAdapters(),
    ];

    private static ImmutableArray<Rule> TurnOnRules =>
    [
        new WakeMissing(),
        new WakeMode(),
        new NotCarried(),
        new WakeLoop(),
        new StartCircuit(),
        new FeedsSupply(),
        new ControlOverloaded(),
        new StaysOn(),
        new FedTwice(),
        new DeadControl(),
        new RelayKick(),
        new WokenBeforeProcessor(),
    ];

    private static ImmutableArray<Rule> SourceRules =>
    [
        new Mutes(),
        new ResistorWatts(),
        new BandLimited(),
        new VolumeDependent(),
        new ResponseUnread(),
    ];

    private static ImmutableArray<Rule> EnergyRules =>
    [
        new AlternatorShort(),
        new AlternatorUnknown(),
        new ReserveShort(),
        new StandbyDrain(),
        new MixedChemistry(),
        new RestVolts(),
    ];

    private static ImmutableArray<Rule> RouteRules =>
    [
        new LengthMissing(),
        new BareInEngineBay(),
        new GrommetMissing(),
        new OutOfReach(),
        new NearHazard(),
        new Overfull(),
        new BareAtHinge(),
    ];

    private static ImmutableArray<Rule> SpecRules =>
    [
        new GearUnconnected(),
        new Unused(),
        new LengthDiffers(),
        new ReadingDiffers(),
        new TitleBlock(),
    ];

    /// <summary>Checks an install against every rule.</summary>
    public static Outcome<Install> Check(Install install) => new(install, Finding.InOrder(SizeAgreement.Of(install, All.SelectMany(rule => rule.Check(install)))));
}
