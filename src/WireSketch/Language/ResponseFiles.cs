using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>
/// Reads the files that responses name under <c>csv</c>: a line for each band, its frequency and its level, with their units, or as bare
/// numbers under a heading that names Hz and dB. Cells are parted by commas, semicolons or tabs; a number's point is a point.
/// </summary>
internal static class ResponseFiles
{
    private static readonly char[] Separators = [';', '\t', ','];

    /// <summary>The responses with the levels of their files filled in.</summary>
    public static ImmutableArray<Response> Read(
        SourceFile spec, ISpecFiles files, ImmutableArray<Response> responses, SpecFindings findings) =>
        [.. responses.Select(r => r.Csv is { } csv && r.Levels.IsEmpty ? r with { Levels = Levels(spec, files, csv, findings) } : r)];

    private static ImmutableArray<(Written<Hertz> Key, Written<Decibels> Value)> Levels(
        SourceFile spec, ISpecFiles files, Written<string> name, SpecFindings findings)
    {
        if (files.Read(spec, name.Value, out var why) is not { } file)
        {
            findings.Add(new(
                "spec/file",
                Severity.Error,
                $"\"{name.Value}\" cannot be read: {why}",
                name.At)
            {
                Help = "write its path as seen from this file, or the levels themselves: levels: { 63 Hz: -3 dB, 1000 Hz: 0 dB }"
            });
            return [];
        }

        var levels = ImmutableArray.CreateBuilder<(Written<Hertz> Key, Written<Decibels> Value)>();
        var bare = false;
        var first = true;
        for (var number = 1; number <= file.LineCount; number++)
        {
            var cells = Cells(file, number);
            if (cells.Length == 0)
            {
                continue;
            }

            if (first && IsHeading(cells, out var units))
            {
                (first, bare) = (false, units);
                continue;
            }

            first = false;
            if (cells.Length < 2)
            {
                findings.Add(new(
                    "spec/file",
                    Severity.Error,
                    $"this line of {file.Name} holds {cells[0].Value} and no level",
                    cells[0].At)
                { Help = "write frequency and level: 63 Hz, -3 dB" });
            }
            else if (Amount<Hertz>(cells[0], bare, "Hz", findings) is { } hertz
                && Amount<Decibels>(cells[1], bare, "dB", findings) is { } level)
            {
                levels.Add((hertz, level));
            }
        }

        if (levels.Count == 0)
        {
            findings.Add(new(
                "spec/file", Severity.Error, $"there are no levels in {file.Name}", name.At)
            {
                Help = "write a line for each band: 63 Hz, -3 dB"
            });
        }

        return levels.ToImmutable();
    }

    /// <summary>A heading has no numbers; it may say that the columns are in Hz and dB.</summary>
    private static bool IsHeading(Written<string>[] cells, out bool units)
    {
        units = cells.Length > 1
            && cells[0].Value.Contains("hz", StringComparison.OrdinalIgnoreCase)
            && !cells[0].Value.Contains("khz", StringComparison.OrdinalIgnoreCase)
            && cells[1].Value.Contains("db", StringComparison.OrdinalIgnoreCase);
        return !cells[0].Value.Any(char.IsAsciiDigit) || (units && Quantity.NumberLength(cells[0].Value) == 0);
    }

    private static Written<T>? Amount<T>(Written<string> cell, bool bare, string unit, SpecFindings findings)
        where T : struct, IQuantity<T>
    {
        var words = bare && Quantity.NumberLength(cell.Value) == cell.Value.Length ? $"{cell.Value} {unit}" : cell.Value;
        if (Quantity.TryRead<T>(words, out var value, out var trouble))
        {
            return new(value, words, cell.At);
        }

        findings.Add(new(
            "spec/unit", Severity.Error, trouble, cell.At)
        {
            Help = $"write the unit, or begin the file with a heading that names it: Hz, dB"
        });
        return null;
    }

    private static Written<string>[] Cells(SourceFile file, int number)
    {
        var line = file.Line(number);
        if (string.IsNullOrWhiteSpace(line) || line[0] == '#')
        {
            return [];
        }

        var separator = Separators.FirstOrDefault(line.Contains, ',');
        var at = file.LineStart(number);
        var cells = new List<Written<string>>();
        foreach (var part in line.Split(separator))
        {
            var trimmed = part.Trim().Trim('"').Trim();
            var start = at + (trimmed.Length > 0 ? part.IndexOf(trimmed, StringComparison.Ordinal) : 0);
            cells.Add(new(trimmed, trimmed, new SourceSpan(file, start, trimmed.Length)));
            at += part.Length + 1;
        }

        return [.. cells];
    }
}
