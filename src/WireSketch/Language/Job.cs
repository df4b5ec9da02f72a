using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Language;

/// <summary>What the title block says.</summary>
public sealed record Job
{
    public static Job None { get; } = new();

    public Written<string>? Title { get; init; }

    public Written<string>? Reference { get; init; }

    public Written<string>? Revision { get; init; }

    public Written<string>? Date { get; init; }

    public Written<string>? Customer { get; init; }

    public Written<string>? Shop { get; init; }

    public Written<string>? Installer { get; init; }

    public Written<string>? Currency { get; init; }

    public Written<string>? Notes { get; init; }

    public Vehicle Vehicle { get; init; } = Vehicle.None;

    internal static Job Read(Fields f)
    {
        f.Require("title");
        return ReadFacts(f);
    }

    private static Job ReadFacts(Fields f) => new()
    {
        Title = f.Text("title", "what is being done; the only fact that is required here"),
        Reference = f.Text("reference", "the shop's number for the job"),
        Revision = f.Text("revision", "revision of this spec"),
        Date = f.Text("date", "date of this revision"),
        Customer = f.Text("customer", "who it is for"),
        Shop = f.Text("shop", "who does it"),
        Installer = f.Text("installer", "who in the shop"),
        Currency = f.Text("currency", "the currency of all prices"),
        Notes = f.Text("notes", "anything else worth keeping"),
        Vehicle = f.Map("vehicle", "the vehicle", Vehicle.Read) ?? Vehicle.None,
    };
}

/// <summary>The vehicle and what its own electrical system gives.</summary>
public sealed record Vehicle
{
    public static Vehicle None { get; } = new();

    public Written<string>? Description { get; init; }

    public Written<Amps>? Alternator { get; init; }

    public Written<Amps>? IdleOutput { get; init; }

    public Written<Amps>? BaseLoad { get; init; }

    /// <summary>What the vehicle itself takes while parked.</summary>
    public Written<Amps>? RestCurrent { get; init; }

    public Written<Volts>? Rest { get; init; }

    public Written<Volts>? Running { get; init; }

    internal static Vehicle Read(Fields f) => new()
    {
        Description = f.Text("description", "year, make and model, as the customer would say it"),
        Alternator = f.Amount<Amps>("alternator", "rated output of the alternator"),
        IdleOutput = f.Amount<Amps>("idle-output", "its output with the engine idling", Assume.IdleOutput.ToString(), zero: true),
        BaseLoad = f.Amount("base-load", "what the vehicle itself takes while driving", Assume.BaseLoad, zero: true),
        RestCurrent = f.Amount("rest-current", "what the vehicle itself takes while parked", Assume.RestCurrent, zero: true),
        Rest = f.Amount("rest", "volts at rest", Assume.Resting),
        Running = f.Amount("running", "volts with the engine running", Assume.Running),
    };
}
