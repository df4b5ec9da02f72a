using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>
/// A system as rules, sizing and papers see it: what was written, how it is wired, what was computed, and the facts that follow from these.
/// Each fact is worked out once, when it is first asked for.
/// </summary>
public sealed class InstalledSystem
{
    private readonly Lazy<bool> isShorted;
    private readonly Lazy<ImmutableArray<SourceReach>> reaches;
    private readonly Lazy<ImmutableArray<ConductorProtection>> protections;
    private readonly Lazy<ImmutableArray<ConductorProtection>> protectionsAhead;
    private readonly Lazy<ImmutableArray<UnprotectedLength>> unprotected;
    private readonly Lazy<ImmutableArray<OverBreaking>> overBreaking;
    private readonly Lazy<ImmutableArray<(LoadPath From, LoadPath To)>> groundPairs;
    private readonly Lazy<ImmutableArray<SourceResponse>> responses;
    private readonly Lazy<ILookup<int, LoadPath>> loadsBehind;
    private readonly Lazy<HashSet<int>> suppliedTerminals;
    private readonly double?[] copper;

    public InstalledSystem(Spec spec, Wiring wiring, ElectricalResults answers)
    {
        Spec = spec;
        Wiring = wiring;
        Answers = answers;
        isShorted = new(() => SourceReach.IsShorted(wiring));
        reaches = new(() => SourceReach.Of(wiring));
        protections = new(() => [.. ConductorProtections.Of(this)]);
        protectionsAhead = new(() => [.. ConductorProtections.Ahead(this)]);
        unprotected = new(() => [.. UnprotectedLengths.Of(this)]);
        overBreaking = new(() => [.. Installation.OverBreaking.Find(this)]);
        groundPairs = new(() => [.. Installation.GroundPairs.Of(this)]);
        responses = new(() => SourceResponse.Of(spec));
        loadsBehind = new(() =>
            wiring.Loads.SelectMany(l =>
                l.Supply.Select(s => s.Link).OfType<InternalConnection>().Distinct().Select(c => (c.Index, Load: l)))
                .ToLookup(x => x.Index, x => x.Load));
        copper = new double?[wiring.Conductors.Length];
        suppliedTerminals = new(() => [.. Reaches.SelectMany(r => r.Own).Select(c => c.Far.Index)]);
    }

    public Spec Spec { get; }

    public Wiring Wiring { get; }

    public ElectricalResults Answers { get; }

    /// <summary>What was chosen where the spec says <c>auto</c>, and which rule decided.</summary>
    public SizeChoices Sizes { get; init; } = SizeChoices.None;

    /// <summary>The starter battery: the first of the spec; null if it has none.</summary>
    internal Gear? Starter => Wiring.Starter?.Gear;

    /// <summary>A source's plus is wired straight to the body: then no operating point means anything until that is mended.</summary>
    internal bool IsShorted => isShorted.Value;

    /// <summary>What each source feeds by itself.</summary>
    internal ImmutableArray<SourceReach> Reaches => reaches.Value;

    /// <summary>Every fed conductor beside the device that protects it, source by source.</summary>
    internal ImmutableArray<ConductorProtection> Protections => protections.Value;

    /// <summary>Every conductor ahead of its source's first devices, beside the largest of those.</summary>
    internal ImmutableArray<ConductorProtection> ProtectionsAhead => protectionsAhead.Value;

    /// <summary>The wire ahead of the first devices that breaks the limit.</summary>
    internal ImmutableArray<UnprotectedLength> Unprotected => unprotected.Value;

    /// <summary>Devices behind which a short draws more than they can break.</summary>
    internal ImmutableArray<OverBreaking> OverBreaking => overBreaking.Value;

    /// <summary>Devices joined by a signal cable and grounded at different points.</summary>
    internal ImmutableArray<(LoadPath From, LoadPath To)> GroundPairs => groundPairs.Value;

    /// <summary>The measured responses of the spec, as curves.</summary>
    internal ImmutableArray<SourceResponse> Responses => responses.Value;

    /// <summary>The loads that are fed through a way inside a device, in the order of the spec.</summary>
    internal IEnumerable<LoadPath> LoadsBehind(InternalConnection connection) => loadsBehind.Value[connection.Index];

    /// <summary>Copper of a conductor together with those parallel to it, in mm².</summary>
    internal double Copper(Conductor conductor) => copper[conductor.Index] ??= GroundPaths.Copper(Wiring, conductor);

    /// <summary>Whether a source's plus is brought to a terminal by wire.</summary>
    internal bool IsSupplied(Terminal terminal) => suppliedTerminals.Value.Contains(terminal.Index);
}
