using System.Security.Cryptography;
using System.Text;
using WireSketch.Electrical;
using WireSketch.Language;

namespace WireSketch.Drawing.Scenes;

/// <summary>What every sheet of a job says about the job.</summary>
internal sealed record TitleFacts(string Title, string Vehicle, string Shop, string Customer, string Installer, string Reference, string Revision, string Date, string Hash)
{
    public static TitleFacts Of(Spec spec)
    {
        var job = spec.Job;
        return new(
            job.Title?.Value ?? "Wiring diagram", job.Vehicle.Description?.Value ?? "", job.Shop?.Value ?? "", job.Customer?.Value ?? "", job.Installer?.Value ?? "",
            job.Reference?.Value ?? "", job.Revision?.Value ?? "", job.Date?.Value ?? "", HashOf(spec));
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

    /// <summary>The first 32 bits of the SHA-256 of the spec and the files it uses: which version of the spec a print is of.</summary>
    private static string HashOf(Spec spec)
    {
        var text = string.Join('\0', spec.Used.Select(f => f.Text).Prepend(spec.File.Text));
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 4));
        return hash[..4] + " " + hash[4..];
    }
}
