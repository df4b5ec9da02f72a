using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using System.Text;
using WireSketch.Electrical.Hookups;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Cli.Commands;

/// <summary><c>hookups</c>: every way to join given coils, and which one a channel uses best.</summary>
internal static class HookupsCommand
{
    public static Command Make(CliContext surroundings)
    {
        var coils = new Argument<string[]>("coils")
        {
            Description = "The voice coils, such as '2 x 4 ohm', or several such words for unlike ones.",
            Arity = ArgumentArity.OneOrMore,
        };
        var power = new Option<string[]>("--power")
        {
            Description = "What the channel gives into a load, such as '2 ohm: 400 W'. May be given several times.",
            HelpName = "LOAD: POWER",
            Arity = ArgumentArity.OneOrMore
        };
        var minimum = new Option<string?>("--minimum") { Description = "The lowest load that the channel may drive.", HelpName = "OHMS" };
        var handles = new Option<string?>("--handles") { Description = "What one coil handles.", HelpName = "WATTS" };
        var command = new Command(
            "hookups",
            "Lists every series and parallel hookup of coils with the load it makes. Given a channel's power, the best safe one comes "
                + "first.")
        {
            coils, power, minimum, handles
        };
        command.SetAction((parse, _) =>
        {
            var all = Coils(parse.GetValue(coils) ?? []);
            var channel = new AmplifierChannel
            {
                Name = Written("channel", "channel"),
                Power = [.. (parse.GetValue(power) ?? []).Select(PowerAt)],
                Minimum = parse.GetValue(minimum) is { } least ? Quantity<Ohms>(least) : null,
            };
            Watts? most = parse.GetValue(handles) is { } watts ? Quantity<Watts>(watts).Value : null;
            surroundings.Out.Write(Table(HookupFinder.Rate(HookupFinder.Find(all), channel, most), most));
            return Task.FromResult(ExitCode.Clean);
        });
        return command;
    }

    private static ImmutableArray<Ohms> Coils(string[] words)
    {
        var coils = ImmutableArray.CreateBuilder<Ohms>();
        foreach (var word in words)
        {
            var parts = word.Split(['x', '×'], 2, StringSplitOptions.TrimEntries);
            var count = 1;
            if (parts.Length == 2 && !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out count))
            {
                throw new UserException($"\"{word}\" are no coils: write 2 x 4 ohm, or 4 ohm");
            }

            var each = Quantity<Ohms>(parts[^1]).Value;
            if (each.Value <= 0 || count < 1 || coils.Count + count > HookupFinder.MostCoils)
            {
                throw new UserException(each.Value <= 0 || count < 1
                    ? $"\"{word}\" is no coil"
                    : $"{HookupFinder.MostCoils} coils are the most");
            }

            coils.AddRange(Enumerable.Repeat(each, count));
        }

        return coils.ToImmutable();
    }

    private static (Written<Ohms>, Written<Watts>) PowerAt(string words) => words.Split(':', 2) is [var load, var power]
        ? (Quantity<Ohms>(load), Quantity<Watts>(power))
        : throw new UserException($"\"{words}\" is no power at a load: write '2 ohm: 400 W'");

    private static Written<T> Quantity<T>(string words)
        where T : struct, IQuantity<T> =>
        Quantities.Quantity.TryRead<T>(words, out var value, out var trouble)
            ? Written(value, words.Trim())
            : throw new UserException(trouble);

    private static Written<T> Written<T>(T value, string words) =>
        new(value, words, new SourceSpan(new("(command line)", words), 0, words.Length));

    private static string Table(ImmutableArray<RatedHookup> hookups, Watts? handles)
    {
        var width = hookups.Max(h => h.Choice.Words.Length);
        var text = new StringBuilder("+ is series, | is parallel\n");
        foreach (var h in hookups)
        {
            var power = h.Power is { } p ? $"  {p,-8}  {h.MostInACoil} in a coil" : "";
            var verdict = !h.IsAllowed ? "below the minimum"
                : !h.IsSafe ? $"more than the {handles} a coil handles"
                : h.Power is not null && ReferenceEquals(h, hookups[0]) ? "best"
                : "";
            var line = string.Create(
                CultureInfo.InvariantCulture,
                $"{h.Choice.Words.PadRight(width)}  {h.Choice.Load,-10}{power}  {verdict}");
            text.Append(line.TrimEnd()).Append('\n');
        }

        return text.ToString();
    }
}
