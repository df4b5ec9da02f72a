using WireSketch.Language;
using WireSketch.Text;

namespace WireSketch.Drawing.Scenes;

/// <summary>What every sheet of a job says about the job.</summary>
internal sealed record TitleFacts(string Title, string Vehicle, string Shop, string Customer, string Installer, string Reference, string Revision, string Date, string Hash)
{
    public static TitleFacts Of(Spec spec)
    {
        var job = spec.Job;
        return new(
            job.Title?.Value ?? "Wiring diagram", job.Vehicle.Description?.Value ?? "", job.Shop?.Value ?? "", job.Customer?.Value ?? "", job.Installer?.Value ?? "",
            job.Reference?.Value ?? "", job.Revision?.Value ?? "", job.Date?.Value ?? "", Fingerprint.ForPeople(Fingerprint.Of(spec.File, spec.Used)));
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
