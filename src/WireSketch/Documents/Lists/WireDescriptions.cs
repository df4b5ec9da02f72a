using System.Globalization;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Documents.Lists;

/// <summary>Wire in the words of a list.</summary>
internal static class WireDescriptions
{
    /// <summary>Everything one must know to take it off the shelf: <c>2 x 12 AWG clear</c>.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="cores">Its cores in one piece.</param>
    /// <param name="carries">What it carries: of a single core without a color it decides which to buy.</param>
    public static string Whole(WireProperties wire, int cores, RunKind carries)
    {
        if (wire.IsLinePair)
        {
            return "line pair, shielded";
        }

        var type = wire.Type is { } t ? $" ({t.Id})" : "";
        var count = cores > 1 ? string.Create(CultureInfo.InvariantCulture, $"{cores} x ") : "";
        var clad = wire.Material == ConductorMaterial.Clad ? " copper-clad aluminum" : "";
        var color = Color(wire) is { Length: > 0 } c ? " " + c : cores == 1 ? Usual(carries) : "";
        var insulation = wire.InsulationIsAssumed ? "" : $" {wire.Insulation}";
        return $"{count}{wire.SizeWords}{color}{clad}{insulation}{type}";
    }

    /// <summary>Red for supply, black for ground (common practice, no published source): the two are never bought as one.</summary>
    private static string Usual(RunKind carries) => carries switch
    {
        RunKind.Supply => " red (usual color)",
        RunKind.Ground => " black (usual color)",
        _ => "",
    };

    public static string Color(WireProperties wire) => wire.ColorWords;

    public static string Material(WireProperties wire) => wire.Material == ConductorMaterial.Clad ? "copper-clad aluminum" : "copper";

    public static string Carries(RunKind kind) => kind switch
    {
        RunKind.Supply => "supply",
        RunKind.Ground => "ground",
        RunKind.Line => "line",
        RunKind.Speaker => "speaker",
        _ => "control",
    };
}
