using WireSketch.Language.Kinds;
using WireSketch.Rules;
using WireSketch.Topology;

namespace WireSketch.Papers.Lists;

/// <summary>The construction of a fuse: as written, else the smallest that comes in its rating and can break the computed fault current.</summary>
internal static class FuseStyle
{
    public static string Of(Install install, Protection holder) =>
        install.Wiring.Links.FirstOrDefault(l => ReferenceEquals(l.Gear, holder)) is { } link ? Of(install, link) : holder.Style?.Value ?? "style to suit";

    public static string Of(Install install, Link link) => link.Style ?? "style to suit";
}
