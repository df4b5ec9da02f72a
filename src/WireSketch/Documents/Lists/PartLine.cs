using System.Collections.Immutable;

namespace WireSketch.Documents.Lists;

/// <summary>The sections of a parts list, in their order.</summary>
public enum PartGroup
{
    Devices,
    Protection,
    Wire,
    Terminals,
    Covering,
    Consumables,
    Spares,
    Labor,
}

/// <summary>A line of the parts list.</summary>
/// <param name="Group">Its section.</param>
/// <param name="Item">What to buy.</param>
/// <param name="Quantity">How many, in <paramref name="Unit"/>.</param>
/// <param name="Unit">pieces, or a unit of length.</param>
/// <param name="Price">Price of one, in the job's currency; null if the spec gives none.</param>
/// <param name="Used">Where it is used.</param>
/// <param name="Remarks">What to look out for when buying.</param>
public sealed record PartLine(
    PartGroup Group, string Item, double Quantity, string Unit, double? Price, ImmutableArray<string> Used, string Remarks)
{
    /// <summary>The unit of things that are counted.</summary>
    public const string Pieces = "pieces";

    /// <summary>What the line costs; null if the spec gives no price.</summary>
    public double? Cost => Price * Quantity;
}
