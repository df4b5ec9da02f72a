using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Testing.Mistakes;

/// <summary>One kind of mistake that people make in specs, and what must be said of it.</summary>
/// <param name="Name">What was done.</param>
/// <param name="IsError">Unsafe or cannot work: every single one must be found as an error. Otherwise it is only likely trouble, and a
/// rate is kept.</param>
/// <param name="Rules">Ids of the rules one of which must find it.</param>
/// <param name="Make">Makes it at every place in a good spec where it is one.</param>
public sealed record MistakeKind(string Name, bool IsError, string[] Rules, Func<GoodSpec, IEnumerable<Mistake>> Make);

/// <summary>A single mistake: a good spec's text with a change in it.</summary>
/// <param name="Place">Run, device or terminal where it was made.</param>
/// <param name="Edits">The change; stretches do not overlap.</param>
public sealed record Mistake(string Place, params Edit[] Edits)
{
    /// <summary>The text with the mistake in it.</summary>
    public string In(SourceFile file) =>
        Edits.OrderByDescending(e => e.At.Start)
            .Aggregate(file.Text, (text, e) => string.Concat(text.AsSpan(0, e.At.Start), e.Words, text.AsSpan(e.At.End)));
}

/// <summary>What came of a mistake.</summary>
/// <param name="Spec">The spec it was made in.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Place">Where.</param>
/// <param name="Caught">A rule of the kind's found it, and as an error if it is one.</param>
/// <param name="Found">What was found that is not found in the untouched spec, in words.</param>
public sealed record Trial(string Spec, MistakeKind Kind, string Place, bool Caught, string Found);
