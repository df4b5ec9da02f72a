namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>Numbers sorted into buckets in two passes: the first counts, the second fills.</summary>
internal sealed class Buckets(int count)
{
    private int[]? fill;

    /// <summary>Where each bucket starts in <see cref="Content"/>; one entry more than buckets.</summary>
    public int[] Start { get; } = new int[count + 1];

    public int[] Content { get; private set; } = [];

    public void Put(int bucket, int value)
    {
        if (fill is null)
        {
            Start[bucket + 1]++;
        }
        else
        {
            Content[fill[bucket]++] = value;
        }
    }

    /// <summary>Ends a pass.</summary>
    public void Turn()
    {
        if (fill is not null)
        {
            return;
        }

        for (int i = 0; i < count; i++)
        {
            Start[i + 1] += Start[i];
        }

        Content = new int[Start[count]];
        fill = Start.AsSpan(0, count).ToArray();
    }
}
