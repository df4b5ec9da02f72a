using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Electrical.Hookups;

/// <summary>One way to join all coils by series and parallel.</summary>
/// <param name="Words">Coils by their impedance, <c>+</c> for series and <c>|</c> for parallel: <c>(4 + 4) | (4 + 4)</c>.</param>
/// <param name="Load">The load it makes.</param>
/// <param name="Shares">The share of the power in each coil, in the order in which <paramref name="Words"/> has them.</param>
public sealed record HookupOption(string Words, Ohms Load, ImmutableArray<(Ohms Coil, Share Share)> Shares);

/// <summary>A hookup on a channel.</summary>
/// <param name="Choice">The hookup.</param>
/// <param name="IsAllowed">Its load is not below the channel's minimum.</param>
/// <param name="Power">What the channel gives into it; null if no power is stated.</param>
/// <param name="MostInACoil">The power in the coil that takes the most; null with the power.</param>
/// <param name="IsSafe">It is allowed, and no coil takes more than it handles.</param>
public sealed record RatedHookup(HookupOption Choice, bool IsAllowed, Watts? Power, Watts? MostInACoil, bool IsSafe);
