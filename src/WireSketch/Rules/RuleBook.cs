using System.Collections.Immutable;
using WireSketch.Rules.Routes;
using WireSketch.Text;

namespace WireSketch.Rules;

/// <summary>All rules, and what they find.</summary>
public static class RuleBook
{
    /// <summary>Every rule, ordered by group as the reference page shows them.</summary>
    public static ImmutableArray<Rule> All { get; } = [.. SupplyRules, .. GroundRules, .. LoadRules, .. SignalRules, .. TurnOnRules, .. SourceRules, .. EnergyRules, .. RouteRules, .. SpecRules];

    private static ImmutableArray<Rule> SupplyRules =>
    [
    ];

    private static ImmutableArray<Rule> GroundRules =>
    [
    ];

    private static ImmutableArray<Rule> LoadRules =>
    [
    ];

    private static ImmutableArray<Rule> SignalRules =>
    [
    ];

    private static ImmutableArray<Rule> TurnOnRules =>
    [
    ];

    private static ImmutableArray<Rule> SourceRules =>
    [
    ];

    private static ImmutableArray<Rule> EnergyRules =>
    [
    ];

    private static ImmutableArray<Rule> RouteRules =>
    [
        new LengthMissing(),
    ];

    private static ImmutableArray<Rule> SpecRules =>
    [
    ];

    /// <summary>Checks an install against every rule.</summary>
    public static Outcome<Install> Check(Install install) => new(install, Finding.InOrder(All.SelectMany(rule => rule.Check(install))));
}
