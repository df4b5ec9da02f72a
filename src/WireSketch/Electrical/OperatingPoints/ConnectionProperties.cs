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
        { Resistance: { } known, Kind: ConnectionKind.Chassis } =>
            (known, $"half of the {Assume.Chassis.Words} between two chassis points ({Assume.Chassis.Basis})"),
        { Resistance: { } known } => (known, $"the factory lead ({Assume.FactoryLead.Basis})"),
        { Kind: ConnectionKind.Joint } => (new(0), "one piece of metal"),
        { Protects: true } =>
            (
                FuseTable.ResistanceOf(link.Style, link.Rating),
                $"type data of its rating, else {Assume.FuseDrop.Words} at rated current ({Assume.FuseDrop.Basis})"),
        { Kind: ConnectionKind.Diode } => (Assume.DiodeSlope.Value, $"a diode, beside its drop ({Assume.DiodeSlope.Basis})"),
        { Drop: { Value: > 0 } drop, Rating: { Value: > 0 } rating } => (new(drop.Value / rating.Value), "its drop at its rating"),
        { Kind: ConnectionKind.Switch } => (Assume.Contact.Value, $"a contact ({Assume.Contact.Basis})"),
        _ => (Assume.FactoryLead.Value, $"the factory lead ({Assume.FactoryLead.Basis})"),
    };
}
