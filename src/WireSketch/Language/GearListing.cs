using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>Where gear stands in the lists.</summary>
public enum ListedAs
{
    /// <summary>Among the devices.</summary>
    Device,

    /// <summary>A fuse in its own holder, among fuses and holders.</summary>
    Fuse,

    /// <summary>A point on the vehicle, which nobody buys.</summary>
    PlaceOnVehicle,
}

/// <summary>What gear may do to people or to the vehicle that papers must warn of.</summary>
public enum GearCaution
{
    /// <summary>Its negative terminal comes off before any work.</summary>
    BatteryPosts,

    /// <summary>Gives current of its own, whatever else is taken off.</summary>
    OwnCurrent,

    /// <summary>Stays charged after everything is off.</summary>
    HoldsCharge,

    /// <summary>Can play loud enough to harm speakers and ears.</summary>
    LoudSound,
}

/// <summary>How gear stands in the lists and papers.</summary>
public sealed record GearListing
{
    public required ListedAs As { get; init; }

    /// <summary>What tells it from others of its kind, as words of a list.</summary>
    public required ImmutableArray<string> Facts { get; init; }

    /// <summary>How it meets the vehicle's own wiring, for the next technician; null if it does not.</summary>
    public VehicleConnection? Connection { get; init; }

    /// <summary>Those of the words that are there.</summary>
    public static ImmutableArray<string> Known(params ReadOnlySpan<string?> words)
    {
        var known = ImmutableArray.CreateBuilder<string>();
        foreach (var word in words)
        {
            if (word is not null)
            {
                known.Add(word);
            }
        }

        return known.ToImmutable();
    }

    /// <summary>A number of things: <c>1 channel</c>, <c>4 channels</c>.</summary>
    public static string Count(int number, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? "" : "s")}");
}

/// <summary>A connection to the vehicle's own wiring.</summary>
public sealed record VehicleConnection
{
    public required Written<string>? Color { get; init; }

    public required Written<string>? Connector { get; init; }

    public required Written<string>? Cavity { get; init; }

    /// <summary>What the vehicle's wire carries, in words; null if nobody says.</summary>
    public required string? Carries { get; init; }

    /// <summary>The most that may be taken from it.</summary>
    public required Written<Amps>? Limit { get; init; }
}
