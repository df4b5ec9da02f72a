using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Topology;

/// <summary>Every single-conductor terminal of every device, and what the names that people write stand for.</summary>
/// <param name="unread">Ids that are written but could not be understood: nothing more is said of what names them.</param>
/// <param name="doubtful">Ids of devices of which not all terminals may be known: a terminal that they seem to lack is not
/// reported.</param>
/// <param name="broken">Part of the file could not be read: a device that is not here may stand there.</param>
internal sealed class TerminalTable(ImmutableHashSet<string> unread, ImmutableHashSet<string> doubtful, bool broken)
{
    private const string BodyId = "(body)";

    private readonly Dictionary<string, Gear> gear = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Terminal> byId = new(StringComparer.Ordinal);
    private readonly List<Terminal> all = [new(0, BodyId, null, TerminalShape.Node("", TerminalRole.Ground), ' ')];

    public IReadOnlyList<Terminal> All => all;

    public IReadOnlyDictionary<string, Terminal> ById => byId;

    public Terminal Body => all[0];

    public void Add(Gear device)
    {
        gear[device.Id] = device;
        foreach (var shape in device.Terminals)
        {
            foreach (var part in shape.Form == TerminalForm.Group ? shape.Members : [shape])
            {
                var id = Name(device, part);
                if (part.Form == TerminalForm.Node)
                {
                    Add(device, part, id, ' ');
                }
                else
                {
                    Add(device, part, id + ".+", '+');
                    Add(device, part, id + ".-", '-');
                }
            }
        }
    }

    public static string Name(Gear device, TerminalShape shape) => shape.Name.Length == 0 ? device.Id : $"{device.Id}.{shape.Name}";

    /// <summary>A single terminal that a device declares.</summary>
    public Terminal Of(Gear device, TerminalShape node) => byId[Name(device, node)];

    /// <summary>The single terminals that a terminal, pair or group stands for, pairs as + then -.</summary>
    public ImmutableArray<Terminal> NodesOf(Gear device, TerminalShape shape) => shape.Form switch
    {
        TerminalForm.Node => [Of(device, shape)],
        TerminalForm.Pair => [byId[Name(device, shape) + ".+"], byId[Name(device, shape) + ".-"]],
        _ => [.. shape.Members.SelectMany(m => NodesOf(device, m))],
    };

    /// <summary>What a name stands for; null, with a finding, if it stands for nothing.</summary>
    public RunEnd? Find(Written<string> name, ICollection<Finding> findings)
    {
        var dot = name.Value.IndexOf('.', StringComparison.Ordinal);
        var id = dot < 0 ? name.Value : name.Value[..dot];
        var rest = dot < 0 ? "" : name.Value[(dot + 1)..];
        if (!gear.TryGetValue(id, out var device))
        {
            if (broken || unread.Contains(id))
            {
                return null;
            }

            findings.Add(TerminalMistakes.NoGear(name, id, rest, gear));
            return null;
        }

        var end = rest.Length == 0 ? Itself(device, name) : Part(device, rest, name);
        if (end is null && !doubtful.Contains(id))
        {
            findings.Add(TerminalMistakes.NoTerminal(device, rest, name));
        }

        return end;
    }

    /// <summary>
    /// Reports the name of a place that was measured if it is neither a terminal, a pair or group of them, nor a device or a run.
    /// </summary>
    public void FindMeasured(Written<string> name, IReadOnlyCollection<string> runs, ICollection<Finding> findings)
    {
        if (broken
            || runs.Contains(name.Value)
            || gear.ContainsKey(name.Value)
            || unread.Contains(name.Value)
            || byId.ContainsKey(name.Value))
        {
            return;
        }

        if (name.Value.Contains('.', StringComparison.Ordinal))
        {
            Find(name, findings);
        }
        else
        {
            findings.Add(References.Finding(
                name.Value, name.At, "device or run", gear.Keys.Concat(runs), "name a terminal, a run or a device"));
        }
    }

    private void Add(Gear device, TerminalShape shape, string id, char side)
    {
        if (!byId.ContainsKey(id))
        {
            var terminal = new Terminal(all.Count, id, device, shape, side);
            all.Add(terminal);
            byId.Add(id, terminal);
        }
    }

    /// <summary>A device named by itself: its only terminal, its coils, or its supply and return together.</summary>
    private RunEnd? Itself(Gear device, Written<string> name)
    {
        if (device.Terminals.FirstOrDefault(s => s.Name.Length == 0) is { } self)
        {
            return End(device, self, name.At);
        }

        if (device.Alone is [var whole])
        {
            return End(device, whole, name.At);
        }

        if (device.Alone is [var plus, var minus])
        {
            var flow = plus.Flow == minus.Flow ? plus.Flow : TerminalFlow.Both;
            return new(device.Id, device, new("", TerminalForm.Pair, plus.Role, flow, []), [Of(device, plus), Of(device, minus)], name.At);
        }

        return device.Terminals.Length == 1 ? End(device, device.Terminals[0], name.At) : null;
    }

    private RunEnd? Part(Gear device, string rest, Written<string> name)
    {
        if (device.Terminals.FirstOrDefault(s => s.Name == rest) is { } shape)
        {
            return End(device, shape, name.At);
        }

        if (device.Terminals.SelectMany(s => s.Members).FirstOrDefault(s => s.Name == rest) is { } member)
        {
            return End(device, member, name.At);
        }

        if (device.Aliases.FirstOrDefault(a => a.Name == rest) is { } alias)
        {
            return alias.Side == ' '
                ? End(device, alias.Terminal, name.At)
                : Side(byId[$"{Name(device, alias.Terminal)}.{alias.Side}"], name.At);
        }

        return byId.TryGetValue($"{device.Id}.{rest}", out var terminal) ? Side(terminal, name.At) : null;
    }

    private RunEnd End(Gear device, TerminalShape shape, SourceSpan at)
    {
        var id = Name(device, shape);
        return new(id, device, shape, NodesOf(device, shape), at);
    }

    private static RunEnd Side(Terminal terminal, SourceSpan at) => new(terminal.Id, terminal.Gear!, terminal.Shape, [terminal], at);
}
