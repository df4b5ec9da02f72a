namespace WireSketch.Drawing.Tests.Layout;

/// <summary>
/// A small seeded generator (a linear congruential one with the constants of Knuth's MMIX), so that test graphs never change.
/// </summary>
internal sealed class SyntheticChance(int seed)
{
    private ulong state = (ulong)(seed + 1) * 0x9E3779B97F4A7C15UL;

    public int Next(int below)
    {
        state = (state * 6364136223846793005UL) + 1442695040888963407UL;
        return (int)((state >> 33) % (ulong)below);
    }

    public bool Is(int percent) => Next(100) < percent;

    public T Of<T>(params T[] choices) => choices[Next(choices.Length)];
}
