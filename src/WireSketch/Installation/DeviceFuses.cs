using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Fuses that devices have of their own.</summary>
internal static class DeviceFuses
{
    /// <summary>The largest fuse that a device behind a fuse has of its own.</summary>
    public static (Gear Gear, Written<Amps> Fuse)? Largest(InstalledSystem install, InternalConnection link) =>
        install.LoadsBehind(link).Select(l => (l.Gear, Own: l.Input.OwnFuse)).Where(x => x.Own is not null)
            .OrderByDescending(x => x.Own!.Value.Value).Select(x => ((Gear, Written<Amps>)?)(x.Gear, x.Own!.Value)).FirstOrDefault();
}
