using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Rules.Energy;
using WireSketch.Rules.Grounds;
using WireSketch.Rules.Loads;
using WireSketch.Rules.Routes;
using WireSketch.Rules.Signals;
using WireSketch.Rules.Sources;
using WireSketch.Rules.Specs;
using WireSketch.Rules.Supply.Conductors;
using WireSketch.Rules.Supply.Connections;
using WireSketch.Rules.Supply.Protection;
using WireSketch.Rules.TurnOn;
using WireSketch.Text;

namespace WireSketch.Rules;

/// <summary>All rules, and what they find.</summary>
public static class RuleBook
{
    /// <summary>Every rule, ordered by group as the reference page shows them.</summary>
    public static ImmutableArray<Rule> All { get; } = [
        .. SupplyRules, .. GroundRules, .. LoadRules, .. SignalRules, .. TurnOnRules, .. SourceRules, .. EnergyRules, .. RouteRules,
        .. SpecRules
    ];

    /// <summary>
    /// What is to be said about every finding there is: of the rules, of acceptances, and of the language itself, in the order in
    /// which the reference page shows them.
    /// </summary>
    public static ImmutableArray<RuleCard> Cards { get; } =
        [
            .. All.Select(r => r.Card),
            Suppressions.Card,
            .. LanguageFindings.All.Select(f =>
                new RuleCard(f.Id, Severity.Error, f.Title, f.Why, new Basis.Reasoning("the rules of the language"), f.Bad, f.Good))
        ];

    /// <summary>The card of an id; null if there is none of that name.</summary>
    public static RuleCard? Find(string id) => Cards.FirstOrDefault(c => c.Id == id);

    /// <summary>The id that was probably meant: of like letters, or of another group; null if none is near.</summary>
    public static string? NearestTo(string id) =>
        Nearest.To(id, Cards.Select(c => c.Id))
        ?? (id.Split('/')[^1] is { Length: > 2 } slug
            ? Cards.Select(c => c.Id).FirstOrDefault(c => c.EndsWith("/" + slug, StringComparison.Ordinal)) ?? NearestSlug(slug)
            : null);

    private static string? NearestSlug(string slug) =>
        Nearest.To(slug, Cards.Select(c => c.Id.Split('/')[1])) is { } near
            ? Cards.Select(c => c.Id).First(c => c.EndsWith("/" + near, StringComparison.Ordinal))
            : null;

    private static ImmutableArray<Rule> SupplyRules =>
    [
        new SupplyMissing(),
        new SupplyDemandUnknown(),
        new SupplyReversed(),
        new SupplyShorted(),
        new SupplyUnfused(),
        new SupplyFuseTooFar(),
        new SupplyFedFromBothEnds(),
        new SupplyFuseAboveWire(),
        new SupplyConductorReduction(),
        new SupplyFuseBelowLoad(),
        new SupplyFuseBelowSurge(),
        new SupplyFuseBelowDevice(),
        new SupplyUnusualRating(),
        new SupplyRatingUnknown(),
        new SupplyHolderMismatch(),
        new SupplyAutoReset(),
        new SupplyBreakingCapacity(),
        new SupplyUpstreamDeviceAlsoOpens(),
        new SupplySlowFault(),
        new SupplyNotSelective(),
        new SupplyDrop(),
        new SupplyInsufficient(),
        new SupplyCladWire(),
        new SupplyGaugeChange(),
        new SupplySignalCable(),
        new SupplyTerminalTooSmall(),
        new SupplyContactOverloaded(),
        new SupplyTapOverloaded(),
        new SupplyIsolatorReversed(),
        new SupplyRelayCoilReversed(),
        new SupplyUnevenParallel(),
        new SupplyExposedTerminals(),
        new SupplyInsulationTooLow(),
    ];

    private static ImmutableArray<Rule> GroundRules =>
    [
        new GroundMissing(),
        new GroundThroughShield(),
        new GroundThinner(),
        new GroundOverloaded(),
        new GroundLong(),
        new GroundBadSurface(),
        new GroundPotentialDifference(),
        new GroundFactoryLead(),
        new GroundShared(),
        new GroundFused(),
        new GroundTooManyLugs(),
    ];

    private static ImmutableArray<Rule> LoadRules =>
    [
        new LoadBelowMinimum(),
        new LoadBridgedBelowMinimum(),
        new LoadBridgeSides(),
        new LoadImpedanceTooHigh(),
        new LoadCoilOverpowered(),
        new LoadCoilReversed(),
        new LoadCoilOpen(),
        new LoadShorted(),
        new LoadOutputsTied(),
        new LoadOutputGrounded(),
        new LoadUnbalanced(),
        new LoadNoHighPass(),
        new LoadNoLowPass(),
        new LoadNoSubsonic(),
        new LoadFiltersCross(),
        new LoadBoostRisky(),
        new LoadWireLoss(),
        new LoadWireOverloaded(),
        new LoadLineOutput(),
        new LoadLimitUnknown(),
    ];

    private static ImmutableArray<Rule> SignalRules =>
    [
        new SignalUnconnected(),
        new SignalWrongLevel(),
        new SignalLevelHigh(),
        new SignalLevelLow(),
        new SignalLevelUnknown(),
        new SignalSwapped(),
        new SignalBandMissing(),
        new SignalOutputsJoined(),
        new SignalOneSideOnly(),
        new SignalLoop(),
        new SignalBesideSupply(),
        new SignalManyAdapters(),
    ];

    private static ImmutableArray<Rule> TurnOnRules =>
    [
        new TurnOnMissing(),
        new TurnOnMode(),
        new TurnOnNotCarried(),
        new TurnOnLoop(),
        new TurnOnStartCircuit(),
        new TurnOnFeedsSupply(),
        new TurnOnOverloaded(),
        new TurnOnStaysOn(),
        new TurnOnFedTwice(),
        new TurnOnNoSource(),
        new TurnOnRelayFlyback(),
        new TurnOnBeforeProcessor(),
    ];

    private static ImmutableArray<Rule> SourceRules =>
    [
        new SourceNeedsLoad(),
        new SourceResistorWatts(),
        new SourceBandLimited(),
        new SourceVolumeDependent(),
        new SourceResponseUnread(),
    ];

    private static ImmutableArray<Rule> EnergyRules =>
    [
        new EnergyAlternatorShort(),
        new EnergyAlternatorUnknown(),
        new EnergyReserveShort(),
        new EnergyParasiticDrain(),
        new EnergyMixedChemistry(),
        new EnergyRestingVoltage(),
    ];

    private static ImmutableArray<Rule> RouteRules =>
    [
        new RouteNoLength(),
        new RouteBareInEngineBay(),
        new RouteNoGrommet(),
        new RouteOutOfReach(),
        new RouteNearHazard(),
        new RouteOverfull(),
        new RouteBareAtHinge(),
    ];

    private static ImmutableArray<Rule> SpecRules =>
    [
        new SpecUnconnected(),
        new SpecUnused(),
        new SpecLengthDiffers(),
        new SpecReadingDiffers(),
        new SpecTitleBlock(),
    ];

    /// <summary>Checks an install against every rule.</summary>
    public static Outcome<InstalledSystem> Check(InstalledSystem install) =>
        new(install, Finding.InOrder(SizeAgreement.Of(install, All.SelectMany(rule => rule.Check(install)))));
}
