using System.Collections.Frozen;

namespace WireSketch.Rules;

/// <summary>Ids that rules had before, and those that they have now.</summary>
public static class FormerRuleIds
{
    private static readonly FrozenDictionary<string, string> Now = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["supply/open-breaker"] = "supply/exposed-terminals",
        ["supply/backed-up"] = "supply/upstream-device-also-opens",
        ["supply/reduction-unprotected"] = "supply/conductor-reduction",
        ["supply/coil-reversed"] = "supply/relay-coil-reversed",
        ["supply/starved"] = "supply/insufficient",
        ["ground/apart"] = "ground/potential-difference",
        ["ground/crowded"] = "ground/too-many-lugs",
        ["turn-on/none"] = "turn-on/missing",
        ["turn-on/dead"] = "turn-on/no-source",
        ["turn-on/relay-kick"] = "turn-on/relay-flyback",
        ["load/uneven"] = "load/unbalanced",
        ["load/above-useful"] = "load/impedance-too-high",
        ["source/mutes"] = "source/needs-load",
        ["energy/standby"] = "energy/parasitic-drain",
        ["energy/rest-volts"] = "energy/resting-voltage",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Every former id.</summary>
    public static IEnumerable<string> All => Now.Keys.Order(StringComparer.Ordinal);

    /// <summary>The id that a rule has now; null if none was called so.</summary>
    public static string? NowOf(string id) => Now.GetValueOrDefault(id);
}
