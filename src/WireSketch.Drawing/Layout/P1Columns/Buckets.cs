namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>Numbers sorted into buckets in two passes: the first counts, the second fills.</summary>
internal sealed class Buckets(int count)
{
    private int[]? _fill;

    /// <summary>Where each bucket starts in <see cref="Content"/>; one entry more than buckets.</summary>
    public int[] Start { get; } = new int[count + 1];

    public int[] Content { get; private set; } = [];

    public void Put(int bucket, int value)
    {
        if (_fill is null)
        {
            Start[bucket + 1]++;
        }
        else
        {
            Content[_fill[bucket]++] = value;
        }
    }

    /// <summary>Ends a pass.</summary>
    public void Turn()
    {
        if (_fill is not null)
        {
            return;
        }

        for (int i = 0; i < count; i++)
        {
            Start[i + 1] += Start[i];
        }

        Content = new int[Start[count]];
        _fill = Start.AsSpan(0, count).ToArray();
    }
}
