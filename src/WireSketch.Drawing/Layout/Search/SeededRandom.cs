namespace WireSketch.Drawing.Layout.Search;

/// <summary>A generator of its own (xorshift64* of Vigna 2016), so that the same sheet is laid out alike everywhere.</summary>
internal sealed class SeededRandom(ulong seed)
{
    private ulong state = seed * 0x9E3779B97F4A7C15UL + 0xD1B54A32D192ED03UL | 1;

    private uint Draw()
    {
        state ^= state >> 12;
        state ^= state << 25;
        state ^= state >> 27;
        return (uint)((state * 0x2545F4914F6CDD1DUL) >> 32);
    }

    /// <summary>A whole number from 0 up to but not including <paramref name="below"/>.</summary>
    public int Next(int below) => (int)(((ulong)Draw() * (uint)below) >> 32);

    /// <summary>True in <paramref name="percent"/> of a hundred cases.</summary>
    public bool Is(int percent) => Next(100) < percent;

    /// <summary>
    /// Minus the natural logarithm of a uniform number between 0 and 1, in thousandths: how much worse an annealer may accept, at
    /// temperature 1.
    /// </summary>
    public int AcceptanceThreshold()
    {
        uint u = Draw() | 1;
        int zeros = System.Numerics.BitOperations.LeadingZeroCount(u);

        // log2(u / 2^32) = -(zeros + 1) + log2(1 + f); the chord correction below stays within 0.01 of it.
        long f = (long)(((ulong)u << (zeros + 1)) & 0xFFFFFFFF) >> 16;
        long bend = (f * (65536 - f)) >> 16;
        long log2 = ((zeros + 1L) << 16) - f - ((bend * 22500) >> 16);
        return (int)((log2 * 693147 / 1000) >> 16);
    }
}
