using System.Collections.Immutable;
using WireSketch.Electrical.Speakers;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Electrical.Hookups;

/// <summary>
/// Lists every distinct way to join given coils, all of them used, by series and parallel alone. The order within a series or parallel
/// group
/// makes no difference, nor do coils of equal impedance among each other.
/// </summary>
public static class HookupFinder
{
    /// <summary>The most coils that are listed; their hookups grow about threefold with each.</summary>
    public const int MostCoils = 8;

    /// <summary>Every hookup, by load, the lowest first.</summary>
    /// <param name="coils">The impedance of each coil.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no coil, or more than <see cref="MostCoils"/>, or one of no
    /// impedance.</exception>
    public static ImmutableArray<HookupOption> Find(ImmutableArray<Ohms> coils)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(coils.Length, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(coils.Length, MostCoils);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(coils.Min(c => c.Value), 0, nameof(coils));
        var values = coils.Distinct().Order().ToArray();
        var all = new Search(values).Of([.. values.Select(v => coils.Count(c => c == v))]);
        return [.. all.Select(n => n.ToChoice()).OrderBy(c => c.Load).ThenBy(c => c.Words, StringComparer.Ordinal)];
    }

    /// <summary>
    /// What a channel does with each hookup: the safe one that gives most comes first, then other safe ones, then the rest.
    /// </summary>
    /// <param name="choices">The hookups.</param>
    /// <param name="channel">The channel.</param>
    /// <param name="handles">What one coil handles; null if unknown.</param>
    public static ImmutableArray<RatedHookup> Rate(ImmutableArray<HookupOption> choices, AmplifierChannel channel, Watts? handles)
    {
        var curve = PowerCurve.Of(channel);
        Ohms? minimum = channel.Minimum?.Value ?? curve.Lowest;
        return
        [
            .. choices.Select(c =>
            {
                var allowed = minimum is not { } least || c.Load.Value >= least.Value * (1 - 1e-9);
                Watts? power = curve.IsKnown ? curve.At(c.Load) : null;
                Watts? most = power is { } p ? p * c.Shares.Max(s => s.Share.Value) : null;
                return new RatedHookup(
                    c,
                    allowed,
                    power,
                    most,
                    allowed && (most is not { } m || handles is not { } h || m.Value <= h.Value * (1 + 1e-9)));
            }).OrderByDescending(r => r.IsSafe).ThenByDescending(r => r.Power?.Value ?? 0).ThenBy(r => r.Choice.Load),
        ];
    }

    /// <summary>A network; in canonical form its parts are in the order of their words.</summary>
    private sealed record Network(char Joint, ImmutableArray<Network> Parts, Ohms Load, string Words)
    {
        public static Network Coil(Ohms ohms) => new(' ', [], ohms, Quantity.Digits(ohms.Value, 6));

        public static Network Join(char joint, IEnumerable<Network> parts)
        {
            var ordered = parts.OrderBy(p => p.Words.Length).ThenBy(p => p.Words, StringComparer.Ordinal).ToImmutableArray();
            var load = joint == '+' ? ordered.Sum(p => p.Load.Value) : 1 / ordered.Sum(p => 1 / p.Load.Value);
            return new(
                joint,
                ordered,
                new(load),
                string.Join($" {joint} ", ordered.Select(p => p.Parts.IsEmpty ? p.Words : $"({p.Words})")));
        }

        public HookupOption ToChoice() => new(Words, Load, [.. SharesOf(1)]);

        private IEnumerable<(Ohms, Share)> SharesOf(double share) => Parts.IsEmpty
            ? [(Load, new Share(share))]
            : Parts.SelectMany(p => p.SharesOf(share * (Joint == '+' ? p.Load / Load : Load / p.Load)));
    }

    private sealed class Search(Ohms[] values)
    {
        private readonly Dictionary<string, ImmutableArray<Network>> known = new(StringComparer.Ordinal);

        /// <summary>Every network of so many coils of each value.</summary>
        public ImmutableArray<Network> Of(int[] counts) =>
            counts.Sum() == 1 ? Single(counts) : [.. Joined('+', counts), .. Joined('|', counts)];

        private ImmutableArray<Network> Single(int[] counts) => [Network.Coil(values[Array.FindIndex(counts, c => c > 0)])];

        /// <summary>Networks whose outermost joint is of one kind; each of their parts is a coil or of the other kind.</summary>
        private ImmutableArray<Network> Joined(char joint, int[] counts)
        {
            var key = joint + string.Join(',', counts);
            if (known.TryGetValue(key, out var done))
            {
                return done;
            }

            var found = new Dictionary<string, Network>(StringComparer.Ordinal);
            foreach (var parts in Divided(joint, counts, counts.Sum() - 1))
            {
                var network = Network.Join(joint, parts);
                found.TryAdd(network.Words, network);
            }

            return known[key] = [.. found.Values];
        }

        /// <summary>
        /// Every way to divide coils into parts. The first part holds the first coil, so that no division comes twice by order alone;
        /// none is larger than <paramref name="most"/>.
        /// </summary>
        private IEnumerable<ImmutableArray<Network>> Divided(char joint, int[] counts, int most)
        {
            if (counts.Sum() == 0)
            {
                yield return [];
                yield break;
            }

            var first = Array.FindIndex(counts, c => c > 0);
            foreach (var taken in Within(counts).Where(t => t[first] > 0 && t.Sum() <= most))
            {
                var rest = counts.Zip(taken, (c, t) => c - t).ToArray();
                if (taken.Sum() == 1)
                {
                    foreach (var others in Divided(joint, rest, most))
                    {
                        yield return [.. Single(taken), .. others];
                    }
                }
                else
                {
                    foreach (var part in Joined(joint == '+' ? '|' : '+', taken))
                    {
                        foreach (var others in Divided(joint, rest, most))
                        {
                            yield return [part, .. others];
                        }
                    }
                }
            }
        }

        private static IEnumerable<int[]> Within(int[] counts)
        {
            var taken = new int[counts.Length];
            while (true)
            {
                var i = 0;
                while (i < counts.Length && taken[i] == counts[i])
                {
                    taken[i++] = 0;
                }

                if (i == counts.Length)
                {
                    yield break;
                }

                taken[i]++;
                yield return (int[])taken.Clone();
            }
        }
    }
}
