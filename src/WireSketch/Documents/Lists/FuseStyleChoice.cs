using WireSketch.Electrical.Faults;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Documents.Lists;

/// <summary>
/// The construction of a fuse: as written, else the smallest that comes in its rating and can break the computed fault current; where
/// none is
/// known to, the smallest of which nobody says what it breaks.
/// </summary>
internal static class FuseStyleChoice
{
    private const string Unknown = "style to suit";

    /// <summary>A place in a block without a wire and without a rating stays empty.</summary>
    public static bool IsFitted(InstalledSystem install, InternalConnection link) =>
        link.Rating is not null || install.Wiring.IsWired(link.B);

    public static string Of(InstalledSystem install, Gear holder) =>
        install.Wiring.Links.FirstOrDefault(l => ReferenceEquals(l.Gear, holder)) is { } link ? Of(install, link) : Unknown;

    public static string Of(InstalledSystem install, InternalConnection link) =>
        StyleOf(install, link) is { } style ? FuseStyles.Words[style] : Unknown;

    /// <summary>Null where neither the fuse nor its rating says.</summary>
    public static FuseStyle? StyleOf(InstalledSystem install, InternalConnection link) => FuseConstruction.Of(link, install.Answers.Faults);

    /// <summary>
    /// What a fuse must be able to break, where nothing says that its construction does; null where that is known, and where the fuse has
    /// no rating.
    /// </summary>
    public static Amps? ToAskFor(InstalledSystem install, InternalConnection link)
    {
        var fault = FuseConstruction.Highest(link, install.Answers.Faults);
        return link is { Kind: ConnectionKind.Fuse, Rating: not null, Breaking: null }
            && fault.Value > 0
            && !(FuseTable.BreakingOf(StyleOf(install, link)) >= fault)
            ? fault
            : null;
    }
}
