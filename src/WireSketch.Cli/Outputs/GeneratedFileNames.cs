using System.Text.RegularExpressions;

namespace WireSketch.Cli.Outputs;

/// <summary>
/// The names under which <c>build</c> writes, in any version of it: what bears one and is not of this build is of an earlier one.
/// </summary>
internal static partial class GeneratedFileNames
{
    /// <summary>
    /// A folder holds this file once a whole install was built into it: all files of our names in it were then written by us.
    /// </summary>
    public const string OfEveryDrawing = "drawing.pdf";

    public static bool Hold(string name) => Pattern.IsMatch(name);

    /// <summary>Whether a name is that of a drawing or one of its sheets.</summary>
    public static bool IsDrawing(string name) => name.StartsWith("drawing", StringComparison.Ordinal) && Hold(name);

    [GeneratedRegex(
        @"\A(?:drawing(?:-[1-9][0-9]{0,3})?\.(?:svg|png)|drawing\.pdf|(?:parts|cuts)\.(?:csv|md)|(?:report|findings)\.(?:md|json)"
            + @"|(?:setup|handover)\.md)\z",
        RegexOptions.CultureInvariant)]
    private static partial Regex Pattern { get; }
}
