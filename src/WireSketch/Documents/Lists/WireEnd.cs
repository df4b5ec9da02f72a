using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Documents.Lists;

/// <summary>What an end of a wire is finished with. Forms and studs are common practice, no published source; the device decides.</summary>
/// <param name="Item">The terminal to buy, with the wire's size and the stud; null where none is bought.</param>
/// <param name="IsCrimped">It is crimped onto the wire and takes a piece of shrink tube.</param>
/// <param name="Remark">What to look out for.</param>
internal sealed record WireEnd(string? Item, bool IsCrimped, string Remark)
{
    private const string CheckStud = "check the stud on the device";

    /// <summary>Cable up to this thickness still goes onto a push-on blade 6.3 mm wide.</summary>
    private static readonly SquareMillimeters ThickestPushOn = WireSize.FromAwg(10).Area;

    public static WireEnd Of(Conductor conductor, Terminal end)
    {
        var size = conductor.Wire.SizeWords;
        return end.Gear switch
        {
            _ when conductor.Wire.IsLinePair => new(null, false, ""),
            Battery b => Ring(size, b.Post?.Value ?? "M8 stud", b.Post is null ? CheckStud : ""),
            Alternator => Ring(size, "M8 stud", CheckStud),
            ChassisPoint => Ring(size, "M8 bolt", "scrape to bare metal, serrated washer, seal afterwards"),
            BusBar or Isolator or Capacitor or Load { KindWord: "inverter" } => Ring(size, "M8 stud", CheckStud),
            FuseBlock when end.Shape.Flow == TerminalFlow.In => Ring(size, "M6 stud", CheckStud),
            ProtectiveDevice p when IsBolted(p) => Ring(size, "M8 stud", CheckStud),
            ProtectiveDevice { Breaker: true } => Ring(size, "M6 stud", CheckStud),
            Relay => PushOn(conductor, "6.3 mm"),
            Switch or Load or LoadResistor => PushOn(conductor, "6.3 mm"),
            Speaker => PushOn(conductor, "to suit the speaker"),
            TapPoint or IgnitionSource => new($"closed splice, {size}", true, "crimp or solder, then insulate; no cut-through connectors"),
            HeadUnit => new($"closed splice, {size}", true, "onto the plug's own lead"),
            Connector => new($"contact for the connector, {size}", false, "of the connector's own family"),
            _ => new($"ferrule, {size}", false, "where the device clamps the wire"),
        };
    }

    private static WireEnd Ring(string size, string stud, string remark) => new($"ring terminal, {size}, {stud}", true, remark);

    private static WireEnd PushOn(Conductor conductor, string width) => conductor.Wire.Size.Area <= ThickestPushOn
        ? new($"push-on terminal, {conductor.Wire.SizeWords}, {width}", true, "")
        : new($"ferrule, {conductor.Wire.SizeWords}", false, "where the device clamps the wire");

    private static bool IsBolted(ProtectiveDevice protection) => protection.Style?.Value is FuseStyle.Strip or FuseStyle.ClassT;
}
