namespace WireSketch.Tests.Electrical.Solver;

internal static class Differences
{
    /// <summary>The worst difference, relative to the larger of the value and 1e-6 of the largest of its kind.</summary>
    public static (double Worst, int At) Worst(IReadOnlyList<double> ours, IReadOnlyList<double> theirs)
    {
        Assert.Equal(theirs.Count, ours.Count);
        var floor = 1e-6 * theirs.Select(Math.Abs).DefaultIfEmpty(0).Max();
        var (worst, at) = (0.0, -1);
        for (var i = 0; i < ours.Count; i++)
        {
            var size = Math.Max(Math.Abs(theirs[i]), floor);
            var difference = size > 0 ? Math.Abs(ours[i] - theirs[i]) / size : 0;
            if (!(difference <= worst))
            {
                (worst, at) = (difference, i);
            }
        }

        return (worst, at);
    }
}
