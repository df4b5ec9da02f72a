using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>Resistance of what joins terminals inside devices, and what that rests on.</summary>
internal static class ConnectionProperties
{
    /// <summary>The resistance of a closed link; of a diode, what it adds to its drop.</summary>
    public static (Ohms Ohms, string Basis) Of(InternalConnection link) => link switch
    {
        { Resistance: { } known, Kind: ConnectionKind.Chassis } => (known, "half of the 1 mohm between two chassis points (common practice)"),
        { Resistance: { } known } => (known, "the factory lead (common practice)"),
        { Kind: ConnectionKind.Joint } => (new(0), "one piece of metal"),
        { Protects: true } => (FuseTable.ResistanceOf(link.Style, link.Rating), "type data of its rating, else 58 mV at rated current (common practice)"),
        { Kind: ConnectionKind.Diode } => (Defaults.DiodeSlope, "a diode, beside its drop (common practice)"),
        { Drop: { Value: > 0 } drop, Rating: { Value: > 0 } rating } => (new(drop.Value / rating.Value), "its drop at its rating"),
        { Kind: ConnectionKind.Switch } => (Defaults.Contact, "a contact (common practice)"),
        _ => (Defaults.FactoryLead, "the factory lead (common practice)"),
    };
}
