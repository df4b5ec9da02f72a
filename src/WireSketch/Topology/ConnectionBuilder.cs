using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Topology;

/// <summary>Turns what gear says of its inside into connections, with the body and the vehicle's own leads.</summary>
internal sealed class ConnectionBuilder(TerminalTable table, ImmutableArray<WiredRun> runs, Func<Terminal, bool> isWired)
{
    private static readonly Ohms HalfOfChassis = Assume.Chassis.Value / 2;

    private static readonly Ohms Lead = Assume.FactoryLead.Value;

    private readonly List<InternalConnection> links = [];

    public List<InternalConnection> Make(IReadOnlyCollection<Gear> gear, ICollection<Finding> findings)
    {
        var starter = gear.FirstOrDefault(g => g.Sources.Any(s => s is BatterySource));
        foreach (var device in gear)
        {
            foreach (var join in device.Joins.Concat(ReferenceEquals(device, starter) ? [GroundLead(device)] : []))
            {
                if (join is TerminalJoin inside)
                {
                    Join(device, inside, starter);
                }
                else if (join is AcrossJoin across)
                {
                    JoinAcross(device, across, findings);
                }
            }
        }

        return links;
    }

    /// <summary>The vehicle's own lead from the starter battery to the body.</summary>
    private static TerminalJoin GroundLead(Gear starter) => new()
    {
        Suffix = ".lead",
        Kind = ConnectionKind.FactoryLead,
        First = Battery(starter).Minus!,
        Second = null,
        End = JoinEnd.Body,
        When = JoinCondition.StarterWithoutGroundCable,
        ClosedIn = SystemStates.All,
    };

    private static BatterySource Battery(Gear gear) => gear.Sources.OfType<BatterySource>().First();

    private void Join(Gear device, TerminalJoin join, Gear? starter)
    {
        var first = table.Of(device, join.First);
        var second = join.End switch
        {
            JoinEnd.Own => table.Of(device, join.Second!),
            JoinEnd.Body => table.Body,
            _ => starter is null ? null : table.Of(starter, Battery(starter).Plus),
        };
        if (second is null
            || (join.When == JoinCondition.FirstIsUnwired && isWired(first))
            || (join.When == JoinCondition.StarterWithoutGroundCable && IsOnBody(first)))
        {
            return;
        }

        // A fuse is written at the device, or on the run from its output without a distance.
        var onRun = join.FuseMayStandAtRun
            ? runs.Where(r => r.Holder is null && r.Run.Protection is not null && r.From.Any(e => e.Nodes.Contains(second)))
                .Select(r => r.Run.Protection!)
                .FirstOrDefault()
            : null;
        var (rating, at) = join.Rating is { } written ? (written.Value, written.At) : (onRun?.Rating.Amps, onRun?.At);
        links.Add(new(
            links.Count,
            device.Id + join.Suffix,
            device,
            join.Kind,
            first,
            second,
            rating,
            onRun?.Style?.Value ?? join.Style?.Value,
            onRun?.Breaking?.Value ?? join.Breaking?.Value,
            ResistanceOf(join.Kind),
            join.Drop?.Value ?? (join.Kind == ConnectionKind.Diode ? Assume.DiodeDrop.Value : null),
            join.ClosedIn,
            join.Kind is ConnectionKind.Fuse or ConnectionKind.Breaker && at is not null ? at : device.Name.At)
        {
            Join = join,
            Coil = join.Drive is { } drive ? new(table.Of(device, drive.Plus), table.Of(device, drive.Minus), drive.ClosesPulledIn) : null,
        });
    }

    private static Ohms? ResistanceOf(ConnectionKind kind) => kind switch
    {
        ConnectionKind.Chassis => HalfOfChassis,
        ConnectionKind.FactoryLead => Lead,
        _ => null,
    };

    /// <summary>
    /// Whether runs lead from a terminal to a chassis point. A cable that only takes a load's return back to the battery does not: the
    /// vehicle's own lead is still there.
    /// </summary>
    private bool IsOnBody(Terminal start) =>
        TerminalGraph.Of(runs.SelectMany(r => r.Conductors), [])
            .From(start)
            .Over(Follow.WithoutShields, Pass.None)
            .Terminals()
            .Any(t => t.Gear is { } gear && gear.LandingAt(t.Shape).Form == LandingForm.BodyBolt);

    private void JoinAcross(Gear device, AcrossJoin join, ICollection<Finding> findings)
    {
        if (table.Find(join.Across, findings) is not { } end)
        {
            return;
        }

        Terminal[] own = [.. join.Own.SelectMany(shape => table.NodesOf(device, shape))];
        if (own.Length != end.Nodes.Length)
        {
            findings.Add(new("spec/ends-differ", Severity.Error,
                $"{device.Id} has {own.Length / 2} resistor{(own.Length > 2 ? "s" : "")}, but {join.Across.Value} has "
                    + $"{end.Nodes.Length / 2} channel{(end.Nodes.Length > 2 ? "s" : "")}",
                join.Across.At)
            {
                Help = "write channels: 2 for a pair of resistors, or name one channel of the source",
                Subjects = [device.Id],
            });
            return;
        }

        for (var i = 0; i < own.Length; i++)
        {
            links.Add(new(
                links.Count, device.Id, device, ConnectionKind.Joint, end.Nodes[i], own[i], null, null, null, null, null,
                SystemStates.None, join.Across.At));
        }
    }
}
