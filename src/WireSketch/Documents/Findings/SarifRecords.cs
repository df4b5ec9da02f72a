using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace WireSketch.Documents.Findings;

// The part of SARIF 2.1.0 that we write; names are the standard's.
internal sealed record SarifLog([property: JsonPropertyName("$schema")] string Schema, string Version, ImmutableArray<SarifRun> Runs);

internal sealed record SarifRun(
    SarifTool Tool,
    Dictionary<string, SarifFolder> OriginalUriBaseIds,
    string ColumnKind,
    ImmutableArray<SarifResult> Results);

internal sealed record SarifTool(SarifDriver Driver);

internal sealed record SarifDriver(string Name, string SemanticVersion, ImmutableArray<SarifRule> Rules);

internal sealed record SarifFolder(SarifText Description);

internal sealed record SarifText(string Text);

internal sealed record SarifRule(
    string Id, string Name, SarifText ShortDescription, SarifText FullDescription, SarifText Help, SarifConfiguration DefaultConfiguration,
    SarifProperties Properties);

internal sealed record SarifConfiguration(string Level);

internal sealed record SarifProperties(ImmutableArray<string> Tags);

internal sealed record SarifResult(
    string RuleId,
    int RuleIndex,
    string Level,
    SarifText Message,
    ImmutableArray<SarifLocation> Locations,
    ImmutableArray<SarifLocation>? RelatedLocations,
    Dictionary<string, string> PartialFingerprints, ImmutableArray<SarifFix>? Fixes, ImmutableArray<SarifSuppression>? Suppressions)
{
    public SarifValues? Properties { get; init; }
}

/// <summary>The property bag of a result: the state in which it holds, its values, and the sizes that it asks for.</summary>
internal sealed record SarifValues(string? State, ImmutableArray<ValueEntry>? Values, ImmutableArray<WantedEntry>? Wants);

internal sealed record SarifLocation(SarifPhysicalLocation PhysicalLocation, SarifText? Message);

internal sealed record SarifPhysicalLocation(SarifArtifact ArtifactLocation, SarifRegion Region);

internal sealed record SarifArtifact(string Uri, string UriBaseId);

internal sealed record SarifRegion(int StartLine, int StartColumn, int EndLine, int EndColumn);

internal sealed record SarifFix(SarifText Description, ImmutableArray<SarifChange> ArtifactChanges);

internal sealed record SarifChange(SarifArtifact ArtifactLocation, ImmutableArray<SarifReplacement> Replacements);

internal sealed record SarifReplacement(SarifRegion DeletedRegion, SarifText InsertedContent);

internal sealed record SarifSuppression(string Kind, string Status, string Justification);

[JsonSerializable(typeof(SarifLog))]
internal sealed partial class SarifContext : JsonSerializerContext;
