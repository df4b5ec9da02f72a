using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules;

/// <summary>
/// What an entry under <c>accept</c> stands for: the finding as it was then. An error must be accepted with its severity and, where
/// it has one, its measured value; a finding that became graver, or measures worse beyond rounding, is open again.
/// </summary>
internal static class Acceptance
{
    /// <summary>Why an entry does not accept a finding; null if it does.</summary>
    public static string? Refuses(AcceptEntry entry, Finding finding)
    {
        if (finding.Severity == Severity.Error && (entry.Severity is null || (entry.Value is null && finding.Measured is not null)))
        {
            return $"an error is accepted with its severity{(finding.Measured is null ? "" : " and its value")}";
        }

        if (entry.Severity is { } severity && finding.Severity > severity)
        {
            return $"it was accepted as {Word(severity)} and is {Word(finding.Severity)} now";
        }

        if (entry.Value is not { } written || finding.Measured is not { } measured)
        {
            return entry.Value is { } none ? $"{none.Value} was accepted, and it has no value any more" : null;
        }

        return !QuantityReader.TryRead(written.Value, measured.Unit, out var accepted, out var rounding)
            ? $"\"{written.Value}\" is not a value like {Readable(measured)}"
            : IsWorse(finding, measured, accepted, rounding) ? $"{written.Value} was accepted, and it is {Readable(measured)} now"
            : null;
    }

    /// <summary>The entry that accepts a finding as it is, to be pasted.</summary>
    public static string Entry(AcceptEntry entry, Finding finding) =>
        $"{{ rule: {finding.Rule}, at: {entry.At!.Value.Value}, severity: {Word(finding.Severity)}"
        + (finding.Measured is { } value ? $", value: {Readable(value)}" : "") + $", because: {entry.Because!.Value.Value.Trim()} }}";

    /// <summary>Worse lies away from the limit; without a limit, more is worse.</summary>
    private static bool IsWorse(Finding finding, FindingValue measured, double accepted, double rounding)
    {
        // The values are decimal words that became binary: a billionth is no difference.
        var room = rounding + (Math.Abs(accepted) * 1e-9);
        return finding.Limit is { } limit && measured.Value < limit.Value
            ? measured.Value < accepted - room
            : measured.Value > accepted + room;
    }

    /// <summary>The value in words that can be read back.</summary>
    private static string Readable(FindingValue value) =>
        QuantityReader.TryRead(value.Text, value.Unit, out _, out _) ? value.Text
        : value.Unit == "1" ? $"{Quantity.Digits(value.Value * 100, 3)} %"
        : $"{Quantity.Digits(value.Value, 3)} {value.Unit}".TrimEnd();

    private static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "advice",
    };
}
