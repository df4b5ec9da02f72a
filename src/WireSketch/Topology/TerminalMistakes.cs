using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Topology;

/// <summary>What is said of an end of a run that names nothing.</summary>
internal static class TerminalMistakes
{
    private static readonly char[] Parting = ['-', '_', ' ', '/', ':', ','];

    /// <summary>No device has the name before the dot.</summary>
    internal static Finding NoGear(Written<string> name, string id, string rest, IReadOnlyDictionary<string, Gear> gear)
    {
        var near = rest.Length == 0 ? Split(name.Value, gear) : null;
        if (near is null && Nearest.To(id, gear.Keys) is { } device)
        {
            near = rest.Length > 0 ? $"{device}.{rest}" : device;
        }

        var points = gear.Values.Where(g => g is ChassisPoint).Select(g => g.Id).ToArray();
        var help = near is not null ? $"did you mean {near}?"
            : !TradeWords.IsBody(id) ? "give it an entry under gear"
            : points.Length == 0 ? "give the point an entry under gear, such as floor-stud: { is: chassis point, surface: bare metal, on: body }"
            : $"name the chassis point: {string.Join(" or ", points)}";
        return new("spec/reference", Severity.Error, $"there is no gear named \"{id}\"", name.At)
        {
            Help = help,
            Subjects = [id],
            Fixes = near is null ? [] : [new($"write {near}", [new(name.At, near)])],
        };
    }

    /// <summary>The device has no such terminal, or it does not say which.</summary>
    internal static Finding NoTerminal(Gear device, string rest, Written<string> name)
    {
        var names = Names(device);
        if (rest == "remote" && names.Contains("remote-in") && names.Contains("remote-out"))
        {
            return new(
                "spec/reference",
                Severity.Error,
                $"{device.Id} has two remote terminals, remote-in and remote-out: \"remote\" alone does not say which",
                name.At)
            {
                Help = $"write {device.Id}.remote-in for the wire that wakes it, {device.Id}.remote-out for the wire by which it wakes "
                    + "others",
                Subjects = [device.Id],
            };
        }

        var near = rest.Length == 0 ? null : Meant(device, rest);
        var list = string.Join(", ", rest.Length == 0 ? names : Nearest.Order(rest, names));
        return new("spec/reference", Severity.Error, rest.Length == 0
            ? $"\"{name.Value}\" does not say which terminal of the {device.Kind} is meant"
            : $"the {device.Kind} {device.Id} has no terminal \"{rest}\"", name.At)
        {
            Help = names.Length == 0 ? $"{device.Id} has no terminals yet"
                : near is null ? $"its terminals are {list}"
                : $"did you mean {device.Id}.{near}? its terminals are {list}",
            Subjects = [device.Id],
            Fixes = near is null ? [] : [new($"write {device.Id}.{near}", [new(name.At, $"{device.Id}.{near}")])],
        };
    }

    /// <summary>A device that stands for both its supply and its return, joined to a single terminal.</summary>
    internal static Finding? WholeDevice(Run run, ImmutableArray<RunEnd> from, ImmutableArray<RunEnd> to)
    {
        var single = from.Concat(to).Where(e => e.Nodes.Length == 1).ToArray();
        return from.Length == 1 && to.Length == 1 && single.Length == 1 && from.Concat(to).Except(single).Single() is var whole
            && whole is { Id: var id, Gear: var gear } && id == gear.Id && gear.Alone.Length == 2
            ? new("spec/ends-differ", Severity.Error,
                $"\"{id}\" stands for both {id}.{gear.Alone[0].Name} and {id}.{gear.Alone[1].Name}, and the other end is one conductor",
                whole.At)
            {
                Help = $"write {id}.{gear.Alone[0].Name} or {id}.{gear.Alone[1].Name}",
                Subjects = [run.Id],
            }
            : null;
    }

    /// <summary>Something between device and terminal that is no dot: <c>amp--</c>, <c>battery+</c>, <c>amp remote</c>.</summary>
    private static string? Split(string written, IReadOnlyDictionary<string, Gear> gear)
    {
        for (var length = written.Length - 1; length > 0; length--)
        {
            if (!gear.TryGetValue(written[..length].TrimEnd(), out var device))
            {
                continue;
            }

            var behind = written[length..].Trim();
            string[] readings = Parting.Contains(behind[0]) && behind.Length > 1 ? [behind[1..].Trim(), behind] : [behind];
            var names = Names(device);
            var terminal = readings.FirstOrDefault(names.Contains) ?? readings.Select(r => Meant(device, r)).FirstOrDefault(m => m is not null);
            if (terminal is not null)
            {
                return $"{device.Id}.{terminal}";
            }
        }

        return null;
    }

    private static string? Meant(Gear device, string written)
    {
        if (TradeWords.Terminal(written, Names(device)) is { } near)
        {
            return near;
        }

        // "out" of a device whose outputs have names of their own: if there is one only, it is that.
        var outputs = device.Terminals.Where(t => t is { Flow: TerminalFlow.Out, Form: not TerminalForm.Node }).ToArray();
        return TradeWords.Terminal(written, ["out"]) is not null && outputs is [var only] ? only.Name : null;
    }

    private static string[] Names(Gear device) =>
    [
        .. device.Terminals.Concat(device.Terminals.SelectMany(s => s.Members))
            .Select(s => s.Name)
            .Where(n => n.Length > 0)
            .Distinct(StringComparer.Ordinal),
    ];
}
