using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Documents.Lists;

/// <summary>What an end of a wire is finished with. The device says how a wire lands on it.</summary>
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
        if (conductor.Wire.IsLinePair)
        {
            return new(null, false, "");
        }

        var landing = end.Gear?.LandingAt(end.Shape) ?? Landing.Clamp;
        return landing.Form switch
        {
            LandingForm.Stud => Ring(size, landing.Size, landing.IsAssumed ? CheckStud : ""),
            LandingForm.BodyBolt => Ring(size, landing.Size, "scrape to bare metal, serrated washer, seal afterwards"),
            LandingForm.PushOn => PushOn(conductor, landing.Size),
            LandingForm.Splice => new($"closed splice, {size}", true, "crimp or solder, then insulate; no cut-through connectors"),
            LandingForm.PlugLead => new($"closed splice, {size}", true, "onto the plug's own lead"),
            LandingForm.PlugContact => new($"contact for the connector, {size}", false, "of the connector's own family"),
            _ => new($"ferrule, {size}", false, "where the device clamps the wire"),
        };
    }

    private static WireEnd Ring(string size, string stud, string remark) => new($"ring terminal, {size}, {stud}", true, remark);

    private static WireEnd PushOn(Conductor conductor, string width) => conductor.Wire.Size.Area <= ThickestPushOn
        ? new($"push-on terminal, {conductor.Wire.SizeWords}, {width}", true, "")
        : new($"ferrule, {conductor.Wire.SizeWords}", false, "where the device clamps the wire");
}
