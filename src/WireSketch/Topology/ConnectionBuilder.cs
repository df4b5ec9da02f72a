using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Topology;

/// <summary>Joins terminals inside devices, and the body to what is bolted to it.</summary>
internal sealed class ConnectionBuilder(TerminalTable table, ImmutableArray<WiredRun> runs, Func<Terminal, bool> isWired)
{
    /// <summary>Between any two chassis points: half of it at each (common practice, no published source).</summary>
    private static readonly Ohms HalfOfChassis = new(0.0005);

    /// <summary>The factory lead at a battery's negative, and between alternator and battery (common practice, no published source).</summary>
    private static readonly Ohms Lead = new(0.001);

    private readonly List<InternalConnection> links = [];

    public List<InternalConnection> Make(IEnumerable<Gear> gear, ICollection<Finding> findings)
    {
        var all = gear.ToArray();
        var first = all.OfType<Battery>().FirstOrDefault();
        foreach (var device in all)
        {
            Join(device, first, findings);
        }

        return links;
    }

    private void Join(Gear device, Battery? first, ICollection<Finding> findings)
    {
        var at = device.Name.At;
        switch (device)
        {
            case ProtectiveDevice p:
                Add(p.Id, p, p.Breaker ? ConnectionKind.Breaker : ConnectionKind.Fuse, "in", "out", p.Rating?.Value, style: p.Style?.Value, breaking: p.Breaking?.Value, at: p.Rating?.At ?? at);
                break;
            case FuseBlock block:
                foreach (var n in Enumerable.Range(1, block.Outputs))
                {
                    JoinOutput(block, n);
                }

                break;
            case DistributionBlock block:
                foreach (var n in Enumerable.Range(1, block.Outputs))
                {
                    Add(block.Id, block, ConnectionKind.Joint, "in", "out." + n.ToString(CultureInfo.InvariantCulture), block.Rating?.Value, at: at);
                }

                break;
            case Isolator { Type.Value: "diode" } i:
                Add(i.Id, i, ConnectionKind.Diode, "main", "second", i.Rating?.Value, drop: i.Drop?.Value ?? new Volts(0.7), closed: i.Closed, at: at);
                break;
            case Isolator i:
                Add(i.Id, i, ConnectionKind.Switch, "main", "second", i.Rating?.Value, drop: i.Drop?.Value, closed: i.Closed, at: at);
                break;
            case Relay r:
                Add(r.Id, r, ConnectionKind.Switch, "30", "87", r.Contact?.Value, at: at);
                Add(r.Id + ".87a", r, ConnectionKind.Switch, "30", "87a", r.Contact?.Value, closed: [new("standby", "standby", at)], at: at);
                break;
            case Switch s:
                Add(s.Id, s, ConnectionKind.Switch, "in", "out", s.Rating?.Value, closed: s.Closed, at: at);
                break;
            case ChassisPoint c:
                AddToBody(c.Id, c, table.Of(c, ""), ConnectionKind.Chassis, HalfOfChassis, at);
                break;
            case TapPoint { Carries.Value: "ground" } t:
                AddToBody(t.Id, t, table.Of(t, ""), ConnectionKind.Chassis, HalfOfChassis, at);
                break;
            case Battery b when ReferenceEquals(b, first) && !IsOnBody(table.Of(b, "-")):
                AddToBody(b.Id + ".lead", b, table.Of(b, "-"), ConnectionKind.FactoryLead, Lead, at);
                break;
            case Alternator a:
                if (!isWired(table.Of(a, "-")))
                {
                    AddToBody(a.Id + ".case", a, table.Of(a, "-"), ConnectionKind.Chassis, HalfOfChassis, at);
                }

                if (first is not null && !isWired(table.Of(a, "+")))
                {
                    links.Add(new(links.Count, a.Id + ".lead", a, ConnectionKind.FactoryLead, table.Of(a, "+"), table.Of(first, "+"), null, null, null, Lead, null, [], at));
                }

                break;
            case LoadResistor { Across: { } across } r:
                JoinAcross(r, across, findings);
                break;
        }
    }

    /// <summary>
    /// Whether runs lead from a terminal to a chassis point. A cable that only takes a load's return back to the battery does not: the
    /// vehicle's own lead is still there.
    /// </summary>
    private bool IsOnBody(Terminal start) =>
        TerminalGraph.Of(runs.SelectMany(r => r.Conductors), []).From(start).Over(Follow.WithoutShields, Pass.None).Terminals().Any(t => t.Gear is ChassisPoint);

    /// <summary>A block's fuse is written at the block, or on the run from that output without <c>at</c>.</summary>
    private void JoinOutput(FuseBlock block, int n)
    {
        var number = n.ToString(CultureInfo.InvariantCulture);
        var output = table.Of(block, "out." + number);
        var atBlock = block.Fuses.Where(f => f.Key.Value == n).Select(f => ((Amps?)f.Value.Value, (SourceSpan?)f.Value.At)).FirstOrDefault();
        var onRun = runs.Where(r => r.Holder is null && r.Run.Protection is not null && r.From.Any(e => e.Nodes.Contains(output))).Select(r => r.Run.Protection!).FirstOrDefault();
        var (rating, at) = atBlock.Item1 is not null ? atBlock : (onRun?.Rating.Amps, onRun?.At);
        Add($"{block.Id}.{number}", block, ConnectionKind.Fuse, "in", "out." + number, rating, style: onRun?.Style?.Value ?? block.Style?.Value, breaking: onRun?.Breaking?.Value, at: at ?? block.Name.At);
    }

    private void JoinAcross(LoadResistor resistor, Written<string> across, ICollection<Finding> findings)
    {
        if (table.Find(across, findings) is not { } end)
        {
            return;
        }

        Terminal[] own = resistor.Channels == 2
            ? [table.Of(resistor, "left.+"), table.Of(resistor, "left.-"), table.Of(resistor, "right.+"), table.Of(resistor, "right.-")]
            : [table.Of(resistor, "1"), table.Of(resistor, "2")];
        if (own.Length != end.Nodes.Length)
        {
            findings.Add(new("spec/ends-differ", Severity.Error,
                $"{resistor.Id} has {own.Length / 2} resistor{(own.Length > 2 ? "s" : "")}, but {across.Value} has {end.Nodes.Length / 2} channel{(end.Nodes.Length > 2 ? "s" : "")}", across.At)
            {
                Help = "write channels: 2 for a pair of resistors, or name one channel of the source",
                Subjects = [resistor.Id],
            });
            return;
        }

        for (var i = 0; i < own.Length; i++)
        {
            links.Add(new(links.Count, resistor.Id, resistor, ConnectionKind.Joint, end.Nodes[i], own[i], null, null, null, null, null, [], across.At));
        }
    }

    private void Add(
        string id, Gear device, ConnectionKind kind, string a, string b, Amps? rating, string? style = null, Amps? breaking = null, Volts? drop = null,
        ImmutableArray<Written<string>> closed = default, SourceSpan? at = null)
    {
        ImmutableArray<string> states = closed.IsDefaultOrEmpty ? [.. States.Words.Where(s => kind is not (ConnectionKind.Switch or ConnectionKind.Diode) || s != "standby")] : [.. closed.Select(c => c.Value)];
        links.Add(new(links.Count, id, device, kind, table.Of(device, a), table.Of(device, b), rating, style, breaking, null, drop, states, at));
    }

    private void AddToBody(string id, Gear device, Terminal terminal, ConnectionKind kind, Ohms resistance, SourceSpan at) =>
        links.Add(new(links.Count, id, device, kind, terminal, table.Body, null, null, null, resistance, null, States.Words, at));
}
