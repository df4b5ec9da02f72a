using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>Where a device, a run or an inline fuse comes from.</summary>
public enum Origin
{
    /// <summary>To be bought and fitted in this job.</summary>
    New,

    /// <summary>Fitted before.</summary>
    Existing,

    /// <summary>Came with the vehicle.</summary>
    Factory,
}

/// <summary>The words of <see cref="Origin"/>.</summary>
public static class Origins
{
    public static ChoiceWords<Origin> Words { get; } = new((Origin.New, "new"), (Origin.Existing, "existing"), (Origin.Factory, "factory"));

    /// <summary>Reads where something comes from; null if it does not say.</summary>
    internal static Origin? Read(Fields f, string otherwise) =>
        f.Choice("origin", "new; existing (fitted before); factory (came with the vehicle)", Words, otherwise)?.Value;
}

/// <summary>Anything with terminals. A record per kind holds the kind's own fields.</summary>
public abstract record Gear
{
    /// <summary>The user's id, with its place in the file.</summary>
    public required Written<string> Name { get; init; }

    public string Id => Name.Value;

    /// <summary>The word that <c>is</c> takes.</summary>
    public abstract string Kind { get; }

    /// <summary>The terminals it offers, in the order in which they are listed to people.</summary>
    public abstract ImmutableArray<TerminalShape> Terminals { get; }

    /// <summary>The sources of supply that it offers.</summary>
    public abstract ImmutableArray<SupplySource> Sources { get; }

    /// <summary>Where it takes current from the supply, and how much.</summary>
    public abstract ImmutableArray<PowerInput> PowerInputs { get; }

    /// <summary>How current passes inside it.</summary>
    public abstract ImmutableArray<InternalJoin> Joins { get; }

    /// <summary>Where it is switched on.</summary>
    public abstract ImmutableArray<TurnOnInput> TurnOnInputs { get; }

    /// <summary>Where it switches others on.</summary>
    public abstract ImmutableArray<TurnOnOutput> TurnOnOutputs { get; }

    /// <summary>Where signals come in, a channel each.</summary>
    public abstract ImmutableArray<SignalInput> SignalInputs { get; }

    /// <summary>Where signals go out, a channel each.</summary>
    public abstract ImmutableArray<SignalOutput> SignalOutputs { get; }

    /// <summary>Somebody has to get at it again: what protects, joins, switches or is set.</summary>
    public abstract bool MustBeReached { get; }

    /// <summary>What it puts between terminals of speaker level.</summary>
    public abstract ImmutableArray<SpeakerPart> SpeakerParts { get; }

    /// <summary>What the installer sets on the device as a whole.</summary>
    public abstract ChannelSettings DeviceSettings { get; }

    /// <summary>
    /// What its id alone stands for as an end of a run: a terminal, pair or group; two single terminals as a pair; nothing where a
    /// terminal must
    /// be named. A device with one terminal is that terminal.
    /// </summary>
    public abstract ImmutableArray<TerminalShape> Alone { get; }

    /// <summary>Other names of its terminals that a run may use.</summary>
    public abstract ImmutableArray<TerminalAlias> Aliases { get; }

    /// <summary>How a wire lands on one of its terminals.</summary>
    public abstract Landing LandingAt(TerminalShape terminal);

    /// <summary>The side of its box at which one of its terminals is drawn.</summary>
    public abstract DrawnSide SideOf(TerminalShape terminal);

    /// <summary>How it is drawn.</summary>
    public abstract GearDrawing Drawing { get; }

    /// <summary>How it stands in lists.</summary>
    public abstract GearListing Listing { get; }

    /// <summary>What papers must warn of.</summary>
    public abstract ImmutableArray<GearCaution> Cautions { get; }

    /// <summary>What may be put on it, as its maker states it, where it joins wires of others.</summary>
    public abstract JointLimits JointLimits { get; }

    /// <summary>How its live studs come.</summary>
    public abstract StudCover StudCover { get; }

    /// <summary>A fuse or breaker that stands by itself: one way in, one way out.</summary>
    public bool OnlyProtects => Terminals.Length == 2 && Joins is [TerminalJoin { Kind: ConnectionKind.Fuse or ConnectionKind.Breaker }];

    /// <summary>One of its sources whose plus is a terminal; null if the terminal gives no supply.</summary>
    public SupplySource? SourceAt(TerminalShape terminal) => Sources.FirstOrDefault(s => s.Plus == terminal);

    public GearProperties Facts { get; init; } = GearProperties.None;

    public string? Zone => Facts.Zone?.Value;

    public Origin Origin => Facts.Origin ?? Origin.New;

    /// <summary>What drawing and papers call it: the name that is written, else one made from its id.</summary>
    public string DisplayName => Facts.DisplayName?.Value ?? DisplayNames.Of(Id, Kind);

    /// <summary>What drawing and papers call its zone; null if it stands in none.</summary>
    public string? ZoneName => Facts.ZoneName ?? Zone;

    /// <summary>Its live studs or terminals are under a cover or boots: as written, else as its kind comes.</summary>
    public bool IsCovered => Facts.Covered?.Value ?? StudCover == StudCover.Covered;

    /// <summary>Fitted already: drawn lighter, not bought, taken as supplied, grounded and woken unless a run says otherwise.</summary>
    public bool InVehicle => Origin != Origin.New;
}

/// <summary>The fields that every device may have.</summary>
public sealed record GearProperties
{
    public static GearProperties None { get; } = new();

    public Written<string>? DisplayName { get; init; }

    public Written<string>? Part { get; init; }

    public Written<string>? Zone { get; init; }

    /// <summary>The name of its zone; filled in once all zones are read.</summary>
    public string? ZoneName { get; init; }

    public Written<string>? Place { get; init; }

    public Written<string>? Make { get; init; }

    public Written<string>? Model { get; init; }

    public int Quantity { get; init; } = 1;

    public Written<double>? Price { get; init; }

    public Written<Seconds>? Labor { get; init; }

    public Written<string>? Notes { get; init; }

    public Written<string>? Photo { get; init; }

    /// <summary>Whether live studs or terminals are under a cover or boots.</summary>
    public Written<bool>? Covered { get; init; }

    /// <summary>hand, panel or none: what it takes to get at it.</summary>
    public Written<Reach>? Reach { get; init; }

    /// <summary>As written, else as the file's settings say; null until both are read, which is new.</summary>
    public Origin? Origin { get; init; }

    /// <summary>Meant to stay live with the ignition off.</summary>
    public bool AlwaysLive { get; init; }

    internal static GearProperties Read(Fields f) => new()
    {
        DisplayName = f.Text("name", "what drawing and papers call it", "made from its id"),
        Part = f.Text("part", "id of the part that describes it; fields written here override the part's"),
        Zone = f.Text("zone", "the zone it is in"),
        Place = f.Text("place", "where exactly, for the next technician"),
        Make = f.Text("make", "maker"),
        Model = f.Text("model", "maker's name of the model"),
        Quantity = f.Count("quantity", "how many to buy; parts list only", "1", least: 0, most: 100_000)?.Value ?? 1,
        Price = f.Number("price", "price of one, in the job's currency"),
        Labor = f.Amount<Seconds>("labor", "time to fit it, for the estimate in the parts list", zero: true),
        Notes = f.Text("notes", "anything else worth keeping"),
        Photo = f.Text("photo", "file name of a photo, named on the hand-over page"),
        Covered = f.Flag(
            "covered",
            "live studs or terminals are under a cover or boots",
            "true for batteries, relays and isolators, else false"),
        Reach = f.Choice("reach", "hand; panel (behind one that comes off); none", Reaches.Words, "hand"),
        AlwaysLive = f.Flag("always-live", "meant to stay live with the ignition off", "false")?.Value ?? false,
        Origin = Origins.Read(f, "as settings say, else new"),
    };
}
