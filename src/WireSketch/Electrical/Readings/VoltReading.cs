using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Readings;

/// <summary>Volts measured between two terminals, and what was computed there.</summary>
internal sealed record VoltReading(Terminal Plus, Terminal Minus, Volts Read, Volts Computed)
{
    public double Off => Read.Value - Computed.Value;
}

/// <summary>One added resistance that would explain readings.</summary>
/// <param name="Runs">The runs in one of which it may lie: the readings cannot tell them apart.</param>
/// <param name="Added">How much.</param>
internal sealed record AddedResistance(ImmutableArray<string> Runs, Ohms Added);
