using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>A zone of the vehicle.</summary>
public sealed record Zone
{
    public required Written<string> Name { get; init; }

    public string Id => Name.Value;

    public Written<Celsius>? Ambient { get; init; }

    /// <summary>Open to weather and road dirt.</summary>
    public bool Exposed { get; init; }

    /// <summary>A metal wall stands between this zone and the next.</summary>
    public bool WallTowardsNext { get; init; }

    /// <summary>True if its name or its temperature makes it an engine bay.</summary>
    public bool IsEngineBay => Id.Contains("engine", StringComparison.OrdinalIgnoreCase);

    /// <summary>Ambient temperature: as written; else 60 C in an engine bay and 30 C elsewhere.</summary>
    public Celsius AmbientOrDefault => Ambient?.Value ?? new Celsius(IsEngineBay ? 60 : 30);

    /// <summary>engine bay, dash, cabin, rear: what is taken if the spec names no zones.</summary>
    public static ImmutableArray<string> DefaultIds { get; } = ["engine bay", "dash", "cabin", "rear"];

    /// <summary>One of the usual zones, with what is taken for it.</summary>
    internal static Zone Usual(Written<string> name)
    {
        var zone = new Zone { Name = name };
        return zone with { Exposed = zone.IsEngineBay, WallTowardsNext = zone.IsEngineBay };
    }

    internal static Zone Read(Fields f)
    {
        var wall = f.Choice("wall", "the wall towards the next zone", WallTypes.Words, "metal after an engine bay, else none")?.Value;
        var zone = new Zone
        {
            Name = f.Key,
            Ambient = f.Amount<Celsius>("ambient", "temperature there", "60 C in an engine bay, 30 C elsewhere"),
            Exposed = f.Flag("exposed", "open to weather and road dirt", "true for an engine bay")?.Value ?? f.Key.Value.Contains("engine", StringComparison.OrdinalIgnoreCase),
        };
        return zone with { WallTowardsNext = wall is null ? zone.IsEngineBay : wall == WallType.Metal };
    }
}

/// <summary>A named stretch of the vehicle that wires follow.</summary>
public sealed record VehiclePath
{
    public required Written<string> Name { get; init; }

    public string Id => Name.Value;

    public Written<string>? From { get; init; }

    public Written<string>? To { get; init; }

    public Written<Meters>? Length { get; init; }

    /// <summary>What it passes: grommet, sill, seat rail.</summary>
    public ImmutableArray<Written<string>> Passes { get; init; } = [];

    /// <summary>What else runs there.</summary>
    public ImmutableArray<Written<string>> Beside { get; init; } = [];

    public ImmutableArray<Written<string>> Hazard { get; init; } = [];

    /// <summary>Inside diameter of its tightest place.</summary>
    public Written<Meters>? Opening { get; init; }

    internal static VehiclePath Read(Fields f) => new()
    {
        Name = f.Key,
        From = f.Text("from", "zone, place of a device, or end of another path, at which it begins"),
        To = f.Text("to", "zone, place of a device, or end of another path, at which it ends"),
        Length = f.Amount<Meters>("length", "its length"),
        Passes = f.Texts("passes", "what it passes: grommet, sill, seat rail"),
        Beside = f.Texts("beside", "what else runs there"),
        Opening = f.Amount<Meters>("opening", "inside diameter of its tightest place: a grommet, a tube, a loom"),
        Hazard = f.Texts("hazard", "what there must not be touched: airbag, fuel, seat rail"),
    };
}

/// <summary>The wall between a zone and the next.</summary>
public enum WallType
{
    Metal,
    None,
}

/// <summary>The words of <see cref="WallType"/>.</summary>
public static class WallTypes
{
    public static ChoiceWords<WallType> Words { get; } = new((WallType.Metal, "metal"), (WallType.None, "none"));
}
