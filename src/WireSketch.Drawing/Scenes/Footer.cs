using System.Collections.Immutable;

namespace WireSketch.Drawing.Scenes;

/// <summary>The foot of a sheet: blocks side by side, in as many rows as they need, the title block last and at the right.</summary>
internal sealed class Footer
{
    public const double Gap = 14;
    private const double RowGap = 8;
    private readonly List<ImmutableArray<FooterBlock>> rows = [];
    private readonly double width;

    public Footer(double width, params ImmutableArray<FooterBlock> blocks)
    {
        this.width = width;
        var row = ImmutableArray.CreateBuilder<FooterBlock>();
        foreach (var block in blocks)
        {
            if (row.Count > 0 && row.Sum(b => b.Width + Gap) + block.Width > width + 0.5)
            {
                rows.Add(row.ToImmutable());
                row.Clear();
            }

            row.Add(block);
        }

        rows.Add(row.ToImmutable());
    }

    public double Height => rows.Sum(r => r.Max(b => b.Height)) + (RowGap * (rows.Count - 1));

    /// <summary>How many findings did not fit.</summary>
    public int Hidden => rows.SelectMany(r => r).OfType<NotesBlock>().Sum(b => b.Hidden);

    public void Draw(ShapeBuilder page, double x, double y)
    {
        foreach (var row in rows)
        {
            var left = x;
            for (var i = 0; i < row.Length; i++)
            {
                var block = row[i];
                var last = row == rows[^1] && i == row.Length - 1;
                block.Draw(page, last ? x + width - block.Width : left, y);
                left += block.Width + Gap;
            }

            y += row.Max(b => b.Height) + RowGap;
        }
    }
}
