using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Language;

/// <summary>A zone of the vehicle.</summary>
public sealed record Zone
{
    public required Written<string> Name { get; init; }

    public string Id => Name.Value;

    /// <summary>What drawing and papers call it: the name that is written, else one made from its id.</summary>
    public string DisplayName => WrittenName?.Value ?? DisplayNames.Phrase(Id);

    public Written<string>? WrittenName { get; init; }

    public Written<Celsius>? Ambient { get; init; }

    /// <summary>Open to weather and road dirt.</summary>
    public bool Exposed { get; init; }

    /// <summary>What stands between this zone and the next.</summary>
    public ZoneWall Wall { get; init; }

    /// <summary>A metal wall stands between this zone and the next.</summary>
    public bool WallTowardsNext => Wall != ZoneWall.None;

    /// <summary>What part of the vehicle it is: as written, else what its id says.</summary>
    public ZoneKind Kind { get; init; } = ZoneKind.Cabin;

    public bool IsEngineBay => Kind == ZoneKind.EngineBay;

    /// <summary>Ambient temperature: as written; else what is assumed for an engine bay or for elsewhere.</summary>
    public Celsius AmbientOrDefault => Ambient?.Value ?? (IsEngineBay ? Assume.AmbientEngineBay : Assume.Ambient).Value;

    /// <summary>engine bay, dash, cabin, rear: what is taken if the spec names no zones.</summary>
    public static ImmutableArray<string> DefaultIds { get; } = ["engine bay", "dash", "cabin", "rear"];

    /// <summary>One of the usual zones, with what is taken for it.</summary>
    internal static Zone Usual(Written<string> name) => With(new() { Name = name }, KindOf(name.Value), exposed: null, wall: null);

    internal static Zone Read(Fields f)
    {
        var kind =
            f.Choice(
                "kind",
                "what part of the vehicle it is",
                ZoneKinds.Words,
                "the one its id is; cargo for rear, trunk and bed; else cabin")?.Value;
        var zone = new Zone
        {
            Name = f.Key,
            WrittenName = f.Text("name", "what drawing and papers call it", "made from its id"),
            Ambient = f.Amount<Celsius>(
                "ambient",
                "temperature there",
                $"{Assume.AmbientEngineBay.Words} in an engine bay, {Assume.Ambient.Words} elsewhere")
        };
        return With(
            zone, kind ?? KindOf(f.Key.Value),
            f.Flag("exposed", "open to weather and road dirt", "true for an engine bay and outside")?.Value,
            f.Choice("wall", "the wall towards the next zone", ZoneWalls.Words, "firewall after an engine bay, else none")?.Value);
    }

    /// <summary>The kind that an id says by itself.</summary>
    internal static ZoneKind KindOf(string id) =>
        ZoneKinds.Words.Find(id) ?? (id is "rear" or "trunk" or "bed" ? ZoneKind.Cargo : ZoneKind.Cabin);

    private static Zone With(Zone zone, ZoneKind kind, bool? exposed, ZoneWall? wall) => zone with
    {
        Kind = kind,
        Exposed = exposed ?? kind is ZoneKind.EngineBay or ZoneKind.Outside,
        Wall = wall ?? (kind == ZoneKind.EngineBay ? ZoneWall.Firewall : ZoneWall.None),
    };
}

/// <summary>A part of a vehicle.</summary>
public enum ZoneKind
{
    EngineBay,
    Dash,
    Cabin,
    LivingArea,
    Cargo,
    Roof,
    Outside,
}

/// <summary>What stands between a zone and the next.</summary>
public enum ZoneWall
{
    None,
    Metal,
    Firewall,
    Bulkhead,
}

/// <summary>A named stretch of the vehicle that wires follow.</summary>
public sealed record VehiclePath
{
    public required Written<string> Name { get; init; }

    public string Id => Name.Value;

    public Written<string>? From { get; init; }

    public Written<string>? To { get; init; }

    public Written<Meters>? Length { get; init; }

    /// <summary>left, right or middle of the vehicle.</summary>
    public Written<VehicleSide>? Side { get; init; }

    /// <summary>What it passes: grommet, door hinge, sill.</summary>
    public ImmutableArray<Written<string>> Passes { get; init; } = [];

    /// <summary>What else runs there.</summary>
    public ImmutableArray<Written<string>> Beside { get; init; } = [];

    public ImmutableArray<Written<Hazard>> Hazard { get; init; } = [];

    /// <summary>Inside diameter of its tightest place.</summary>
    public Written<Meters>? Opening { get; init; }

    internal static VehiclePath Read(Fields f) => new()
    {
        Name = f.Key,
        From = f.Text("from", "zone, place of a device, or end of another path, at which it begins"),
        To = f.Text("to", "zone, place of a device, or end of another path, at which it ends"),
        Length = f.Amount<Meters>("length", "its length"),
        Passes = f.Texts(
            "passes",
            $"what it passes: {PassageWords.Listed(PassageWords.Guards)} guard a wire; {PassageWords.Listed(PassageWords.Hinges)} bend "
                + "it; other words are printed only"),
        Side = f.Choice("side", "the side of the vehicle", VehicleSides.Words),
        Beside = f.Texts(
            "beside",
            $"what else runs there: {PassageWords.Listed(PassageWords.Supply)} disturb a signal, other words are printed only"),
        Opening = f.Amount<Meters>("opening", "inside diameter of its tightest place: a grommet, a tube, a loom"),
        Hazard = f.Choices("hazard", "what there must not be touched", Hazards.Words),
    };
}

