using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Speakers;

/// <summary>What a channel's load would be if one coil were broken.</summary>
/// <param name="Speaker">The driver.</param>
/// <param name="Coil">Its coil, from 1.</param>
/// <param name="IsOpen">The coil is open; else shorted.</param>
/// <param name="Load">The load of the coils that are left; null if no current can flow.</param>
internal sealed record CoilFault(Speaker Speaker, int Coil, bool IsOpen, Ohms? Load);

/// <summary>Breaks every coil in turn, open and shorted.</summary>
internal static class CoilFaults
{
    private const double ShortOhms = 1e-3;

    /// <summary>
    /// A resistance as a meter shows it does not depend on frequency; crossovers are looked at where they let most through.
    /// </summary>
    private const double Tone = 1;

    /// <summary>Every single fault of a coil between two terminals.</summary>
    public static ImmutableArray<CoilFault> Between(Wiring wiring, Terminal plus, Terminal minus)
    {
        var networks = new SpeakerNetworks(wiring, _ => new(0));
        if (networks.At(plus) is not { } network || networks.RootOf(plus) != networks.RootOf(minus))
        {
            return [];
        }

        var faults = ImmutableArray.CreateBuilder<CoilFault>();
        foreach (var coil in network.Parts.OfType<NetworkPart.CoilPart>())
        {
            faults.Add(new(coil.Speaker, coil.Number, true, Load(network.With(coil, null))));
            faults.Add(new(
                coil.Speaker,
                coil.Number,
                false,
                Load(network.With(coil, new NetworkPart.Resistance(coil.A, coil.B, new(ShortOhms))))));
        }

        return faults.ToImmutable();

        Ohms? Load(SpeakerNetwork broken) =>
            broken.Drive(plus, minus, NetworkView.Coils, Tone).Impedance is { } z ? new Ohms(z.Magnitude) : null;
    }
}
