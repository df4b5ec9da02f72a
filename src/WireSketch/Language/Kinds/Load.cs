using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A lamp, motor, pump, fridge, inverter or other load.</summary>
public sealed record Load : Gear
{
    public override string Kind => Type.Word;

    /// <summary>Its positive terminal.</summary>
    public static TerminalShape Positive { get; } = Node("+", TerminalRole.Supply, TerminalFlow.In);

    /// <summary>Its negative terminal.</summary>
    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Positive, Negative];

    /// <summary>What kind of load it is.</summary>
    public required LoadType Type { get; init; }

    public Written<Watts>? Power { get; init; }

    public Written<Amps>? Current { get; init; }

    public Written<Ohms>? Resistance { get; init; }

    /// <summary>The voltage at which it takes that.</summary>
    public Written<Volts>? Rated { get; init; }

    public Written<DrawLaw>? Behaves { get; init; }

    public Written<Amps>? Surge { get; init; }

    public Written<Share>? Duty { get; init; }

    public Written<Seconds>? Hours { get; init; }

    public Written<Volts>? Lowest { get; init; }

    public bool Critical { get; init; }

    public Written<Amps>? Standby { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs =>
    [
        new()
        {
            Plus = Positive, Minus = Negative, IsOptional = false, IsCritical = Critical, OwnFuse = null, Fits = null,
            Takes = new ApplianceDraw
            {
                Power = Power,
                Current = Current,
                Resistance = Resistance,
                Rated = Rated,
                WrittenLaw = Behaves,
                Law = Behaves?.Value ?? (Resistance is not null ? DrawLaw.Resistance : Type.Law),
                Surge = Surge, Lowest = Lowest, Duty = Duty, Hours = Hours, AlwaysLive = Facts.AlwaysLive, Standby = Standby,
                IsInverter = Type == LoadType.Inverter,
            },
        },
    ];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [Positive, Negative];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Type.Landing;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = Type.Symbol,
        Family = DeviceFamily.Load,
        Form = DrawnForm.Box,
        IsHub = false,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = GearDrawing.Join(Type.HasOwnWord ? Kind : "", Power?.Words ?? Current?.Words),
        PlainWords = Type.HasOwnWord ? Kind : "",
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(Power?.Words ?? Current?.Words ?? Resistance?.Words),
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static Load Read(Fields f, LoadType type)
    {
        f.Choose(needed: true, "power", "current", "resistance");
        f.Choose(needed: false, "duty", "hours");
        return ReadFacts(f, type);
    }

    private static Load ReadFacts(Fields f, LoadType type) => new()
    {
        Name = f.Key,
        Type = type,
        Power = f.Amount<Watts>("power", "what it takes at its rated voltage"),
        Current = f.Amount<Amps>("current", "what it takes at its rated voltage"),
        Resistance = f.Amount<Ohms>("resistance", "its resistance"),
        Rated = f.Amount<Volts>("rated", "the voltage at which it takes that", "12 V"),
        Behaves = f.Choice(
            "behaves",
            "how its draw follows the voltage",
            DrawLaws.Words,
            "resistance for a lamp, current for a motor or pump, else power"),
        Surge = f.Amount<Amps>("surge", "current for a moment when it starts, which its fuse must outlast"),
        Duty = f.Amount<Share>("duty", "share of the time it runs", zero: true),
        Hours = f.Amount<Seconds>("hours", "hours a day it runs", zero: true),
        Lowest = f.Amount<Volts>("lowest", "the voltage below which it stops"),
        Critical = f.Flag("critical", "held to the tighter limit of voltage drop", "false")?.Value ?? false,
        Standby = f.Amount<Amps>("standby", "draw while asleep", zero: true),
    };
}

/// <summary>A kind of load, and what is known of it without a word from the spec.</summary>
/// <param name="Word">The word that <c>is</c> takes.</param>
/// <param name="Law">What of its draw stays the same as the voltage changes.</param>
/// <param name="Symbol">How it is drawn.</param>
/// <param name="Landing">How a wire lands on it.</param>
/// <param name="HasOwnWord">The word says what it is.</param>
public sealed record LoadType(string Word, DrawLaw Law, DeviceSymbol Symbol, Landing Landing, bool HasOwnWord)
{
    public static LoadType Lamp { get; } = new("lamp", DrawLaw.Resistance, DeviceSymbol.Lamp, Landing.Blade, true);

    public static LoadType Motor { get; } = new("motor", DrawLaw.Current, DeviceSymbol.Motor, Landing.Blade, true);

    public static LoadType Pump { get; } = new("pump", DrawLaw.Current, DeviceSymbol.Motor, Landing.Blade, true);

    public static LoadType Fridge { get; } = new("fridge", DrawLaw.Power, DeviceSymbol.Cold, Landing.Blade, true);

    public static LoadType Inverter { get; } = new("inverter", DrawLaw.Power, DeviceSymbol.Inverter, Landing.UsualStud("M8 stud"), true);

    public static LoadType Other { get; } = new("general load", DrawLaw.Power, DeviceSymbol.None, Landing.Blade, false);
}

/// <summary>What of a load's draw stays the same as the voltage changes.</summary>
public enum DrawLaw
{
    Power,
    Current,
    Resistance,
}

/// <summary>The words of <see cref="DrawLaw"/>.</summary>
public static class DrawLaws
{
    public static ChoiceWords<DrawLaw> Words { get; } = new(
        (DrawLaw.Power, "power"),
        (DrawLaw.Current, "current"),
        (DrawLaw.Resistance, "resistance"));
}
