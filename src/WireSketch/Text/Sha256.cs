using System.Buffers.Binary;
using System.Numerics;

namespace WireSketch.Text;

/// <summary>
/// SHA-256 by FIPS 180-4, in managed code: the runtime's own asks the system for a cryptographic library, and where there is none the
/// process ends. It names texts here and guards nothing.
/// </summary>
internal static class Sha256
{
    private const int Block = 64;

    /// <summary>FIPS 180-4, 4.2.2: the fractional parts of the cube roots of the first 64 primes.</summary>
    private static readonly uint[] Constants =
    [
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5,
        0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174,
        0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da,
        0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967,
        0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85,
        0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070,
        0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3,
        0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
    ];

    /// <summary>The 32 bytes of the hash.</summary>
    public static byte[] Hash(ReadOnlySpan<byte> data)
    {
        // FIPS 180-4, 5.3.3: the fractional parts of the square roots of the first eight primes.
        Span<uint> state =
        [
            0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19,
        ];
        var whole = data.Length / Block * Block;
        for (var at = 0; at < whole; at += Block)
        {
            Add(state, data.Slice(at, Block));
        }

        // FIPS 180-4, 5.1.1: a one, zeros, and the length in bits.
        var rest = data[whole..];
        Span<byte> padded = stackalloc byte[rest.Length + 9 <= Block ? Block : 2 * Block];
        padded.Clear();
        rest.CopyTo(padded);
        padded[rest.Length] = 0x80;
        BinaryPrimitives.WriteUInt64BigEndian(padded[^8..], (ulong)data.Length * 8);
        for (var at = 0; at < padded.Length; at += Block)
        {
            Add(state, padded.Slice(at, Block));
        }

        var hash = new byte[32];
        for (var i = 0; i < state.Length; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(hash.AsSpan(4 * i), state[i]);
        }

        return hash;
    }

    /// <summary>FIPS 180-4, 6.2.2.</summary>
    private static void Add(Span<uint> state, ReadOnlySpan<byte> block)
    {
        Span<uint> words = stackalloc uint[64];
        for (var t = 0; t < 16; t++)
        {
            words[t] = BinaryPrimitives.ReadUInt32BigEndian(block[(4 * t)..]);
        }

        for (var t = 16; t < 64; t++)
        {
            var early = BitOperations.RotateRight(words[t - 15], 7) ^ BitOperations.RotateRight(words[t - 15], 18) ^ (words[t - 15] >> 3);
            var late = BitOperations.RotateRight(words[t - 2], 17) ^ BitOperations.RotateRight(words[t - 2], 19) ^ (words[t - 2] >> 10);
            words[t] = unchecked(words[t - 16] + early + words[t - 7] + late);
        }

        var (a, b, c, d) = (state[0], state[1], state[2], state[3]);
        var (e, f, g, h) = (state[4], state[5], state[6], state[7]);
        for (var t = 0; t < 64; t++)
        {
            var upper = BitOperations.RotateRight(e, 6) ^ BitOperations.RotateRight(e, 11) ^ BitOperations.RotateRight(e, 25);
            var first = unchecked(h + upper + ((e & f) ^ (~e & g)) + Constants[t] + words[t]);
            var lower = BitOperations.RotateRight(a, 2) ^ BitOperations.RotateRight(a, 13) ^ BitOperations.RotateRight(a, 22);
            var second = unchecked(lower + ((a & b) ^ (a & c) ^ (b & c)));
            (h, g, f, e) = (g, f, e, unchecked(d + first));
            (d, c, b, a) = (c, b, a, unchecked(first + second));
        }

        ReadOnlySpan<uint> sum = [a, b, c, d, e, f, g, h];
        for (var i = 0; i < state.Length; i++)
        {
            state[i] = unchecked(state[i] + sum[i]);
        }
    }
}
