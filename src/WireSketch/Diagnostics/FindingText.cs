using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using WireSketch.Quantities;

namespace WireSketch.Diagnostics;

/// <summary>
/// A sentence of a finding, with the values that stand in it. A rule writes an interpolated string; a hole says after a colon what
/// part its value plays: <c>{amps:measured}</c>, <c>{most:limit}</c>, <c>{volts:measured 4}</c> with four digits, or any other word
/// as the value's name. A plain string does not turn into one by itself, so that no value is hidden in words.
/// </summary>
[InterpolatedStringHandler]
public sealed class FindingText
{
    private readonly ImmutableArray<object>.Builder parts;

    /// <param name="literalLength">Given by the compiler.</param>
    /// <param name="formattedCount">Given by the compiler.</param>
    public FindingText(int literalLength, int formattedCount) => parts = ImmutableArray.CreateBuilder<object>((2 * formattedCount) + 1);

    private FindingText(IEnumerable<object> parts)
        : this(0, 0) => this.parts.AddRange(parts);

    /// <summary>No words.</summary>
    public static FindingText None { get; } = new(0, 0);

    /// <summary>The values in it, in their order.</summary>
    public ImmutableArray<FindingValue> Values => [.. parts.OfType<FindingValue>()];

    /// <summary>The sizes that it asks for, in their order.</summary>
    public ImmutableArray<WantedSize> Wants => [.. parts.OfType<WantedSize>()];

    /// <summary>The state that it names first, in the word of the language; null if it names none.</summary>
    public string? State => parts.OfType<StatePhrase>().Select(s => s.Word).FirstOrDefault();

    /// <summary>An interpolated string where the compiler needs to be told, as in one arm of a choice.</summary>
    public static FindingText Of(FindingText text) => text;

    /// <summary>Words that hold no value.</summary>
    public static FindingText Words(string words)
    {
        var text = new FindingText(0, 0);
        text.AppendLiteral(words);
        return text;
    }

    /// <summary>A list in words: <c>P1, P2 and P3</c>.</summary>
    public static FindingText List(IEnumerable<FindingText> items)
    {
        var all = items.ToArray();
        var text = new FindingText(0, 0);
        for (var i = 0; i < all.Length; i++)
        {
            text.AppendLiteral(i == 0 ? "" : i == all.Length - 1 ? " and " : ", ");
            text.AppendFormatted(all[i]);
        }

        return text;
    }

    /// <summary>The same with other sizes in place of those it asks for.</summary>
    internal FindingText WithWants(Func<WantedSize, WantedSize> change) =>
        new(parts.Select(p => p is WantedSize wanted ? change(wanted) : p));

    public void AppendLiteral(string literal)
    {
        if (literal.Length > 0)
        {
            parts.Add(literal);
        }
    }

    public void AppendFormatted(string? words) => AppendLiteral(words ?? "");

    public void AppendFormatted(object? value) => AppendLiteral(Convert.ToString(value, CultureInfo.InvariantCulture) ?? "");

    public void AppendFormatted(FindingText text) => parts.AddRange(text.parts);

    public void AppendFormatted(StatePhrase state) => parts.Add(state);

    public void AppendFormatted(WantedSize wanted) => parts.Add(wanted);

    public void AppendFormatted<T>(T quantity, string? format = null)
        where T : struct, IQuantity<T>
    {
        var (_, digits, _) = Read(format);
        AppendFormatted(PrintedValue.Of(quantity, Quantity.Print(quantity, digits ?? 3)), format);
    }

    public void AppendFormatted<T>(T? quantity, string? format = null)
        where T : struct, IQuantity<T>
    {
        if (quantity is { } value)
        {
            AppendFormatted(value, format);
        }
    }

    public void AppendFormatted<T>(Written<T> written, string? format = null)
        where T : struct, IQuantity<T> => AppendFormatted(PrintedValue.Of(written.Value, written.Words), format);

    public void AppendFormatted<T>(Written<T>? written, string? format = null)
        where T : struct, IQuantity<T>
    {
        if (written is { } value)
        {
            AppendFormatted(value, format);
        }
    }

    public void AppendFormatted(WireSize size, string? format = null) => AppendFormatted(PrintedValue.Of(size, size.ToString()), format);

    public void AppendFormatted(int count, string? format = null)
    {
        var words = count.ToString(CultureInfo.InvariantCulture);
        if (format is null)
        {
            AppendLiteral(words);
        }
        else
        {
            AppendFormatted(PrintedValue.Of(count, "", words), format);
        }
    }

    public void AppendFormatted(PrintedValue value, string? format = null)
    {
        var (role, _, name) = Read(format);
        parts.Add(new FindingValue(role, value.Value, value.Unit, value.Text) { Name = name });
    }

    public override string ToString()
    {
        var text = new StringBuilder();
        foreach (var part in parts)
        {
            text.Append(part is FindingValue value ? value.Text : part.ToString());
        }

        return text.ToString();
    }

    internal static (ValueRole Role, int? Digits, string? Name) Read(string? format)
    {
        var words = format?.Split(' ') ?? [];
        int? digits = words.Length > 0 && int.TryParse(words[^1], NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : null;
        var name = string.Join(' ', digits is null ? words : words[..^1]);
        return name switch
        {
            "measured" => (ValueRole.Measured, digits, null),
            "limit" => (ValueRole.Limit, digits, null),
            "" => (ValueRole.Other, digits, null),
            _ => (ValueRole.Other, digits, name),
        };
    }
}
