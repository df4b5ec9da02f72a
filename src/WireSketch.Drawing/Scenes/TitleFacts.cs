using WireSketch.Language;
using WireSketch.Text;

namespace WireSketch.Drawing.Scenes;

/// <summary>What every sheet of a job says about the job.</summary>
internal sealed record TitleFacts
{
    public required string Title { get; init; }

    public required string Vehicle { get; init; }

    public required string Shop { get; init; }

    public required string Customer { get; init; }

    public required string Installer { get; init; }

    public required string Reference { get; init; }

    public required string Revision { get; init; }

    public required string Date { get; init; }

    /// <summary>Fingerprint of the spec and of what it uses.</summary>
    public required string Hash { get; init; }

    public static TitleFacts Of(Spec spec)
    {
        var job = spec.Job;
        return new()
        {
            Title = job.Title?.Value ?? "Wiring diagram",
            Vehicle = job.Vehicle.Description?.Value ?? "",
            Shop = job.Shop?.Value ?? "",
            Customer = job.Customer?.Value ?? "",
            Installer = job.Installer?.Value ?? "",
            Reference = job.Reference?.Value ?? "",
            Revision = job.Revision?.Value ?? "",
            Date = job.Date?.Value ?? "",
            Hash = Fingerprint.ForPeople(Fingerprint.Of(spec.File, spec.Used)),
        };
    }

    /// <summary>A state as the drawing names it.</summary>
    public static string Words(SystemState state, bool sound) => state switch
    {
        SystemState.FullOutput when !sound => "everything on, engine running",
        SystemState.Music when !sound => "average use, engine running",
        SystemState.Idle when !sound => "average use, engine idling",
        SystemState.EngineOff when !sound => "average use, engine off",
        SystemState.FullOutput => "full output on a test tone, engine running",
        SystemState.Music => "music, engine running",
        SystemState.Idle => "music, engine idling",
        SystemState.EngineOff => "music, engine off",
        _ => "everything asleep",
    };
}
