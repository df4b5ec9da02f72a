using System.Collections.Immutable;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>The cautions on every sheet.</summary>
internal static class SheetCautions
{
    public static string Heading(Audience audience) => audience == Audience.Customer ? "FOR YOUR SAFETY" : "BEFORE YOU START";

    public static ImmutableArray<string> For(Audience audience) => audience == Audience.Customer
        ?
        [
            "Never replace a fuse by one of a higher rating.",
            "If a fuse opens again, or anything smells or gets hot, switch the system off and call the shop.",
            "Loud sound harms hearing, also in a car.",
            "Show this sheet to whoever works on the vehicle next.",
        ]
        :
        [
            "Disconnect the battery's negative first; fit the fuse last.",
            "Look behind every panel before drilling; a grommet in every hole in metal. Wear eye protection.",
            "Keep clear of airbag wiring, fuel and brake lines, seat rails.",
            "The vehicle maker's instructions and local codes come first; if in doubt, ask a licensed technician.",
        ];
}
