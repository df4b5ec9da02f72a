using System.Collections.Immutable;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>The top-level keys of a spec, each declared once.</summary>
internal static class SpecKeys
{
    /// <summary>All keys, in the order in which people are told of them.</summary>
    internal static ImmutableArray<string> Order { get; } =
        ["wiresketch", "use", "job", "zones", "parts", "wires", "gear", "paths", "runs", "settings", "readings", "response", "accept"];

    /// <summary>The keys that a file named under <c>use</c> may have.</summary>
    internal static ImmutableArray<string> Shared { get; } = ["wiresketch", "parts", "wires", "zones"];

    /// <summary>Reads all keys. Gear and parts are read by whoever knows the parts.</summary>
    internal static Spec Read(Fields f, SourceFile file, Func<Fields, Gear?> readGear, Func<Fields, Gear?> readPart)
    {
        f.Require("job");
        f.Count("wiresketch", "version of this language; required, and first", most: 1);
        f.Texts("use", "files whose parts, wires and zones this file may name; paths are relative to this file");
        var job = f.Map("job", "what is being done, for whom, to which vehicle; fills the title block", Job.Read);
        var gear = f.Each("gear", "everything with terminals, by id", readGear);
        var (zones, wires) = ReadShared(f, readPart);
        return new Spec
        {
            File = file,
            Job = job ?? Job.None,
            Zones = zones,
            Gear = gear,
            Wires = wires,
            Paths = f.Each("paths", "named stretches of the vehicle that wires follow, by id", VehiclePath.Read, phrases: true),
            Runs = f.Each("runs", "every wire or cable, by id: the id is printed on its label", Run.Read),
            Settings = f.Map("settings", "defaults for this file", SpecSettings.Read) ?? SpecSettings.None,
            Readings = f.List("readings", "what was measured on the finished vehicle", Reading.Read),
            Responses = f.List("response", "band levels measured at a source, at two or more volume settings", Response.Read),
            Accepted = f.List("accept", "findings that were looked at and accepted", AcceptEntry.Read),
        };
    }

    /// <summary>Reads the keys that a spec and a file named under <c>use</c> have alike.</summary>
    internal static (ImmutableArray<Zone> Zones, ImmutableArray<WireType> Wires) ReadShared(Fields f, Func<Fields, Gear?> readPart)
    {
        f.Each("parts", "descriptions of gear for use under part:, by id", readPart);
        return (
            f.Each("zones", "the vehicle's zones, in drawing order", Zone.Read, phrases: true),
            f.Each("wires", "wire types for use under wire:, by id", WireType.Read));
    }
}
