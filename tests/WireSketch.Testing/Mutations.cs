using CsCheck;

namespace WireSketch.Testing;

/// <summary>Texts that almost are specs: a valid one with slips such as people and damaged disks make.</summary>
public static class Mutations
{
    private const string Characters = "{}[]:,-#&*!|>'\"%@` \t\n\r.?0aZ<=~\\\0\u0007é\u2028\ud800";

    /// <summary>The text with one to six slips in it.</summary>
    public static Gen<string> Of(string text) =>
        Gen.Select(Gen.Int[0, 7], Gen.Double[0, 1], Gen.Int[0, Characters.Length - 1], Gen.Int[1, 40]).List[1, 6]
            .Select(slips => slips.Aggregate(text, (t, slip) => Slip(t, slip.Item1, slip.Item2, Characters[slip.Item3], slip.Item4)));

    private static string Slip(string text, int kind, double where, char character, int length)
    {
        var at = (int)(where * text.Length);
        var end = Math.Min(text.Length, at + length);
        return kind switch
        {
            0 or 1 => text.Insert(at, character.ToString()),
            2 or 3 => at < text.Length ? string.Concat(text.AsSpan(0, at), character.ToString(), text.AsSpan(at + 1)) : text,
            4 => text.Remove(at, end - at),
            5 => text.Insert(at, text[at..end]),
            6 => text[..at],
            _ => string.Join('\n', Swapped(text.Split('\n'), where)),
        };
    }

    private static string[] Swapped(string[] lines, double where)
    {
        var at = (int)(where * (lines.Length - 1));
        if (at + 1 < lines.Length)
        {
            (lines[at], lines[at + 1]) = (lines[at + 1], lines[at]);
        }

        return lines;
    }
}
