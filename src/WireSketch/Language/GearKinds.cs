using System.Collections.Immutable;
using WireSketch.Language.Kinds;

namespace WireSketch.Language;

/// <summary>A kind of gear: the word that <c>is</c> takes, and how its own fields are read.</summary>
/// <param name="Word">The word.</param>
/// <param name="Says">What it is, one phrase, for the reference page.</param>
/// <param name="Read">Reads the kind's own fields.</param>
public sealed record GearKind(string Word, string Says, Func<Fields, Gear> Read);

/// <summary>All kinds of gear, in the order of the reference page.</summary>
public static class GearKinds
{
    public static ImmutableArray<GearKind> All { get; } =
    [
        new("battery", "a battery", Battery.Read),
        new("alternator", "an alternator", Alternator.Read),
        new("general source", "solar, shore or DC-DC charger", GeneralSource.Read),
        new("capacitor", "a stiffening capacitor", Capacitor.Read),
        new("fuse", "a fuse in its own holder", f => ProtectiveDevice.Read(f, breaker: false)),
        new("breaker", "a circuit breaker", f => ProtectiveDevice.Read(f, breaker: true)),
        new("fuse block", "fuses with a common input", FuseBlock.Read),
        new("distribution block", "divides a cable, without fuses", DistributionBlock.Read),
        new("bus bar", "one node for many runs", f => BusBar.Read(f, ground: false)),
        new("ground block", "one ground node for many runs", f => BusBar.Read(f, ground: true)),
        new("chassis point", "a bolt on the body or frame", ChassisPoint.Read),
        new("isolator", "joins two batteries while charging", Isolator.Read),
        new("relay", "a relay", Relay.Read),
        new("switch", "a switch", Switch.Read),
        new("ignition source", "a vehicle circuit that is switched", IgnitionSource.Read),
        new("tap point", "a point on the vehicle's own wiring", TapPoint.Read),
        new("head unit", "a radio or other head unit", HeadUnit.Read),
        new("processor", "a signal processor", Processor.Read),
        new("level adapter", "turns speaker level into line level", LevelAdapter.Read),
        new("load resistor", "loads a source", LoadResistor.Read),
        new("amplifier", "an amplifier", Amplifier.Read),
        new("passive crossover", "divides a speaker signal by frequency", PassiveCrossover.Read),
        new("speaker", "a speaker", f => Speaker.Read(f, subwoofer: false)),
        new("subwoofer", "a subwoofer", f => Speaker.Read(f, subwoofer: true)),
        new("level control", "a remote level knob", LevelControl.Read),
        new("lamp", "a lamp", f => Load.Read(f, LoadType.Lamp)),
        new("motor", "a motor", f => Load.Read(f, LoadType.Motor)),
        new("pump", "a pump", f => Load.Read(f, LoadType.Pump)),
        new("fridge", "a fridge", f => Load.Read(f, LoadType.Fridge)),
        new("inverter", "an inverter", f => Load.Read(f, LoadType.Inverter)),
        new("general load", "anything else that takes current", f => Load.Read(f, LoadType.Other)),
        new("connector", "a plug; each cavity is one node", Connector.Read),
    ];

    /// <summary>The kind that a word names; null if there is none.</summary>
    public static GearKind? Of(string word) => All.FirstOrDefault(k => k.Word == word);
}
