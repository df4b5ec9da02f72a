using System.Collections.Immutable;

namespace WireSketch.Documents;

/// <summary>What must stand on every paper: this work can start fires, burst batteries, set off airbags and hurt hearing.</summary>
internal static class Cautions
{
    /// <summary>For the one who works on the vehicle.</summary>
    public static ImmutableArray<string> ForTechnicians { get; } =
    [
        "The vehicle maker's instructions, local codes and licensed practice come before this paper. Figures are computed from what the "
            + "spec says; measure before you rely on them.",
        "Disconnect the negative terminal of every battery first; fit the fuse last, when everything else is done and checked.",
        "Keep clear of airbags and their wiring, of fuel and brake lines. Look behind a panel before drilling.",
        "Wear eye protection. Batteries give off gas that explodes: no sparks, no flames, no tools across the posts.",
        "Turn levels up slowly: full output can harm hearing for good within minutes.",
    ];

    /// <summary>In one paragraph, for lists that go to the workbench.</summary>
    public const string InShort =
        "Cautions: the vehicle maker's instructions, local codes and licensed practice come first. Disconnect the negative terminal of "
        + "every battery first, fit the fuse last. Look behind a panel before drilling; keep clear of airbags and their wiring, of fuel "
        + "and brake lines; wear eye protection, at the bench too.";

    /// <summary>For the owner of the vehicle.</summary>
    public static ImmutableArray<string> ForOwners { get; } =
    [
        "If a fuse opens, look for the cause first. Replace it only by one of the same style and rating; a larger one lets the wire burn.",
        "If you smell burning or see smoke: stop, engine off, everyone out. Have the battery disconnected by someone who knows how.",
        "Do not touch wiring near yellow plugs or yellow tape: that is the airbag system.",
        "Loud sound harms hearing for good, and hides sirens and horns. If your ears ring afterwards, it was too loud.",
        "Before anyone welds on the vehicle, starts it with a booster or replaces the battery, show them these papers.",
        "The vehicle maker's instructions come before these pages. What fitted equipment means for a warranty or an insurance is for "
            + "those who gave it to say: keep these pages for them.",
    ];
}
