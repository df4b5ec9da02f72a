using System.Globalization;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Papers.Lists;

/// <summary>Wire in the words of a list.</summary>
internal static class WireWords
{
    /// <summary>Everything one must know to take it off the shelf: <c>2 x 12 AWG clear</c>.</summary>
    /// <param name="wire">The wire.</param>
    /// <param name="cores">Its cores in one piece.</param>
    /// <param name="carries">What it carries: of a single core without a colour it decides which to buy.</param>
    public static string Whole(WireFacts wire, int cores, RunKind carries)
    {
        if (wire.IsLinePair)
        {
            return "line pair, shielded";
        }

        var type = wire.Type is { } t ? $" ({t.Id})" : "";
        var count = cores > 1 ? string.Create(CultureInfo.InvariantCulture, $"{cores} x ") : "";
        var clad = wire.Material == ConductorMaterial.Clad ? " copper-clad aluminium" : "";
        var colour = Colour(wire) is { Length: > 0 } c ? " " + c : cores == 1 ? Usual(carries) : "";
        var insulation = wire.InsulationIsAssumed ? "" : $" {wire.Insulation}";
        return $"{count}{wire.SizeWords}{colour}{clad}{insulation}{type}";
    }

    /// <summary>Red for supply, black for ground (common practice, no published source): the two are never bought as one.</summary>
    private static string Usual(RunKind carries) => carries switch
    {
        RunKind.Supply => " red (usual colour)",
        RunKind.Ground => " black (usual colour)",
        _ => "",
    };

    public static string Colour(WireFacts wire) => string.Join('/', wire.Colours);

    public static string Material(WireFacts wire) => wire.Material == ConductorMaterial.Clad ? "copper-clad aluminium" : "copper";

    public static string Carries(RunKind kind) => kind switch
    {
        RunKind.Supply => "supply",
        RunKind.Ground => "ground",
        RunKind.Line => "line",
        RunKind.Speaker => "speaker",
        _ => "control",
    };
}
