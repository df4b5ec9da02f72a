using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>
/// Everything that is taken where a spec is silent, each once: reader, solver, papers, keys page and drawing use the same object. All of it
/// is common practice without a published source, unless its basis says otherwise.
/// </summary>
internal static class Assume
{
    // The vehicle.

    /// <summary>What the vehicle itself draws while driving.</summary>
    public static Assumption<Amps> BaseLoad { get; } = Assumption.Of(new Amps(25));

    /// <summary>What a parked vehicle draws by itself: 20 to 50 mA are usual.</summary>
    public static Assumption<Amps> RestCurrent { get; } = Assumption.Of(new Amps(0.03));

    /// <summary>Resting voltage of a charged flooded battery, and of the vehicle.</summary>
    public static Assumption<Volts> Resting { get; } = Assumption.Of(new Volts(12.6));

    /// <summary>Of a charged AGM or gel battery.</summary>
    public static Assumption<Volts> RestingAgm { get; } = Assumption.Of(new Volts(12.8));

    /// <summary>Of a charged lithium battery.</summary>
    public static Assumption<Volts> RestingLithium { get; } = Assumption.Of(new Volts(13.2));

    /// <summary>Voltage with the engine running; also what a charger regulates to.</summary>
    public static Assumption<Volts> Running { get; } = Assumption.Of(new Volts(14.2));

    /// <summary>Output of an alternator with the engine idling, over its rating.</summary>
    public static Assumption<Share> IdleOutput { get; } = Assumption.Of(new Share(0.5), "half of its rating", Assumption.CommonPractice);

    // Batteries.

    public static Assumption<AmpHours> Capacity { get; } = Assumption.Of(new AmpHours(60));

    /// <summary>Internal resistance of a battery of <see cref="Capacity"/>; of others in inverse proportion to their capacity.</summary>
    public static Assumption<Ohms> Internal { get; } =
        Assumption.Of(new Ohms(0.008), "8 mohm for 60 Ah, in inverse proportion to the capacity", Assumption.CommonPractice);

    /// <summary>What a charged battery takes for each volt above rest, in amperes over its ampere-hours.</summary>
    public static Assumption<double> ChargePerVolt { get; } =
        Assumption.Of(0.06, "it takes 6 % of its capacity in A for each volt above rest", Assumption.CommonPractice);

    /// <summary>The share of its capacity that may be used.</summary>
    public static Assumption<Share> Usable { get; } = Assumption.Of(new Share(0.5), "half", Assumption.CommonPractice);

    /// <summary>Of a lithium battery.</summary>
    public static Assumption<Share> UsableLithium { get; } = Assumption.Of(new Share(0.8), "four fifths", Assumption.CommonPractice);

    // Resistances and drops.

    /// <summary>The factory lead at a battery's negative, and between alternator and battery.</summary>
    public static Assumption<Ohms> FactoryLead { get; } = Assumption.Of(new Ohms(0.001));

    /// <summary>The body between any two ground points; half of it at each.</summary>
    public static Assumption<Ohms> Chassis { get; } = Assumption.Of(new Ohms(0.001));

    /// <summary>Inside a factory circuit between battery and the place where it is used.</summary>
    public static Assumption<Ohms> FactoryCircuit { get; } = Assumption.Of(new Ohms(0.02));

    /// <summary>The switch inside a device that feeds its remote output.</summary>
    public static Assumption<Ohms> RemoteSwitch { get; } = Assumption.Of(new Ohms(1));

    /// <summary>Droop of a regulator, terminal to terminal.</summary>
    public static Assumption<Ohms> Regulator { get; } = Assumption.Of(new Ohms(0.0005));

    /// <summary>Closed contacts of a switch, relay or isolator.</summary>
    public static Assumption<Ohms> Contact { get; } = Assumption.Of(new Ohms(0.0005));

    /// <summary>One crimped or screwed connection.</summary>
    public static Assumption<Ohms> Termination { get; } = Assumption.Of(new Ohms(0.0002));

    /// <summary>Forward drop of an isolator's diode.</summary>
    public static Assumption<Volts> DiodeDrop { get; } = Assumption.Of(new Volts(0.7));

    /// <summary>What a diode adds to its drop.</summary>
    public static Assumption<Ohms> DiodeSlope { get; } = Assumption.Of(new Ohms(0.002));

    /// <summary>Of a fuse whose rating nobody states.</summary>
    public static Assumption<Ohms> Fuse { get; } = Assumption.Of(new Ohms(0.0005));

    /// <summary>Drop of a fuse at its rating, where no type sheet is known: the mean of four that were seen, 56 to 60 mV.</summary>
    public static Assumption<Volts> FuseDrop { get; } = Assumption.Of(new Volts(0.058));

    // Control.

    /// <summary>What a remote input draws.</summary>
    public static Assumption<Amps> Remote { get; } = Assumption.Of(new Amps(0.02));

    /// <summary>The most that a remote output or a switched source supplies for turn-on.</summary>
    public static Assumption<Amps> ControlLimit { get; } = Assumption.Of(new Amps(0.5));

    /// <summary>Coil current of a relay at <see cref="Rated"/>.</summary>
    public static Assumption<Amps> RelayCoil { get; } = Assumption.Of(new Amps(0.15));

    /// <summary>What pulls a relay in: half of its rated voltage; makers state 7 V to 8 V to pull in, 1 V to 5 V to drop out.</summary>
    public static Assumption<Volts> PullIn { get; } = Assumption.Of(new Volts(6));

    // Loads.

    /// <summary>Where a draw in amperes is stated without a voltage.</summary>
    public static Assumption<Volts> Rated { get; } = Assumption.Of(new Volts(12));

    /// <summary>An amplifier with no signal.</summary>
    public static Assumption<Amps> AmplifierIdle { get; } = Assumption.Of(new Amps(1));

    public static Assumption<Amps> HeadUnit { get; } = Assumption.Of(new Amps(5));

    public static Assumption<Amps> Processor { get; } = Assumption.Of(new Amps(1));

    public static Assumption<Amps> LevelAdapter { get; } = Assumption.Of(new Amps(0.1));

    /// <summary>Output over input of an amplifier at full output.</summary>
    public static Assumption<Share> Efficiency { get; } = Assumption.Of(new Share(0.65));

    /// <summary>Of an amplifier of class D.</summary>
    public static Assumption<Share> EfficiencyClassD { get; } = Assumption.Of(new Share(0.8));

    /// <summary>What an amplifier takes with music, over what it takes at full output.</summary>
    public static Assumption<Share> Music { get; } = Assumption.Of(new Share(1.0 / 8), "one eighth", Assumption.CommonPractice);

    /// <summary>One voice coil.</summary>
    public static Assumption<Ohms> Coil { get; } = Assumption.Of(new Ohms(4));

    // Wires and places.

    /// <summary>A run of which neither length nor path is known.</summary>
    public static Assumption<Meters> Length { get; } = Assumption.Of(new Meters(3), "3 m", Assumption.CommonPractice);

    /// <summary>Temperature that insulation is rated for.</summary>
    public static Assumption<Celsius> Insulation { get; } = Assumption.Of(new Celsius(80));

    /// <summary>A wire without a size, and where <c>auto</c> starts: the thinnest of the ampacity table.</summary>
    public static Assumption<WireSize> Size { get; } = Assumption.Of(WireSize.FromAwg(18), "18 AWG", AmpacityTable.Source);

    /// <summary>Core and shield of a signal cable.</summary>
    public static Assumption<WireSize> SignalSize { get; } = Assumption.Of(WireSize.FromAwg(24), "24 AWG", Assumption.CommonPractice);

    /// <summary>Anywhere but in an engine bay.</summary>
    public static Assumption<Celsius> Ambient { get; } =
        Assumption.Of(AmpacityTable.Ambient, "30 C", $"as those who reprint {AmpacityTable.Source} state it");

    public static Assumption<Celsius> AmbientEngineBay { get; } = Assumption.Of(new Celsius(60));

    // Settings.

    /// <summary>Slack of each cut piece.</summary>
    public static Assumption<Share> Slack { get; } = Assumption.Of(new Share(0.1));

    /// <summary>The most voltage drop for an amplifier, head unit, processor, or a load that is marked critical.</summary>
    public static Assumption<Share> DropCritical { get; } = Assumption.Of(new Share(0.03));

    /// <summary>For everything else.</summary>
    public static Assumption<Share> DropOther { get; } =
        Assumption.Of(new Share(0.1), "46 CFR 183.340(p): not above 10 % at the load, for small passenger vessels");

    /// <summary>Shrink tube for a crimped end.</summary>
    public static Assumption<Meters> ShrinkPerEnd { get; } = Assumption.Of(new Meters(0.05));

    /// <summary>Between the ties of a wire.</summary>
    public static Assumption<Meters> BetweenTies { get; } = Assumption.Of(new Meters(0.3));
}
