using WireSketch.Quantities;
namespace WireSketch.Language;

/// <summary>How a wire is fastened to a terminal.</summary>
public enum LandingForm
{
    /// <summary>A ring terminal on a stud or post.</summary>
    Stud,

    /// <summary>A ring terminal on bare metal of the body, under a bolt.</summary>
    BodyBolt,

    /// <summary>A push-on terminal on a blade; a wire too thick for one is clamped.</summary>
    PushOn,

    /// <summary>Joined to a wire of the vehicle.</summary>
    Splice,

    /// <summary>Joined to a lead of the device's own plug.</summary>
    PlugLead,

    /// <summary>Crimped into a contact of a connector's own family.</summary>
    PlugContact,

    /// <summary>Held by a set screw or clamp of the device.</summary>
    Clamp,
}

/// <summary>How a wire lands on a terminal. Forms and studs are common practice, no published source; the device decides.</summary>
/// <param name="Form">How it is fastened.</param>
/// <param name="Size">The stud, bolt or blade; empty where the form says it all.</param>
/// <param name="IsAssumed">Nobody wrote the size of the stud: the installer looks at the device.</param>
public sealed record Landing(LandingForm Form, string Size, bool IsAssumed)
{
    /// <summary>The thickest wire that it takes; null if nobody says.</summary>
    public Written<WireSize>? Thickest { get; init; }

    public static Landing Clamp { get; } = new(LandingForm.Clamp, "", false);

    public static Landing Splice { get; } = new(LandingForm.Splice, "", false);

    /// <summary>A blade 6.3 mm wide.</summary>
    public static Landing Blade { get; } = new(LandingForm.PushOn, "6.3 mm", false);

    /// <summary>A stud of the usual size.</summary>
    public static Landing UsualStud(string size) => new(LandingForm.Stud, size, true);
}
