using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology.Routes;

namespace WireSketch.Topology;

/// <summary>Turns runs into conductors: cables into their cores, hookups into jumpers, inline devices into two pieces.</summary>
internal sealed class ConductorBuilder(Spec spec, SizeChoices choices, TerminalTable table, List<Finding> findings)
{
    private readonly List<Conductor> conductors = [];
    private readonly Dictionary<string, WireType> types = spec.Wires.DistinctBy(t => t.Id).ToDictionary(t => t.Id, StringComparer.Ordinal);
    private readonly RouteFinder routes = new(spec.Paths);
    private readonly Dictionary<string, Zone> zones = spec.Zones.DistinctBy(z => z.Id).ToDictionary(z => z.Id, StringComparer.Ordinal);

    // Of these not all terminals may be known: a count that differs is no second slip.
    private readonly HashSet<string> doubtful = spec.Doubtful.ToHashSet(StringComparer.Ordinal);

    public List<Conductor> Conductors => conductors;

    private TerminalTable Table => table;

    /// <summary>Holders of inline devices, in the order of their runs.</summary>
    public List<ProtectiveDevice> Holders { get; } = [];

    /// <summary>Wires one run; null if an end cannot be found.</summary>
    public WiredRun? Wire(Run run)
    {
        var from = Ends(run.From);
        var to = Ends(run.To);
        if (from.IsEmpty || to.IsEmpty)
        {
            return null;
        }

        if (from.SelectMany(e => e.Nodes).Intersect(to.SelectMany(e => e.Nodes)).FirstOrDefault() is { } same)
        {
            findings.Add(new("spec/value", Severity.Error, $"{run.Id} leads from {same.Id} to {same.Id}", run.To[0].At)
            {
                Help = "name the terminal at its other end",
                Subjects = [run.Id],
            });
        }

        var route = Route(run, from, to);
        var known = Length(run, route);
        var length = known ?? WiredRun.AssumedLength;
        var wire = WireResolver.Resolve(spec.Broken ? run with { WireIsRefused = true } : run, types, choices, findings) with
        {
            Termination = spec.Settings.Termination?.Value ?? Assume.Termination.Value
        };
        var kind = Kind(from, to);
        var holder = Holder(run, from, to, length);
        var start = conductors.Count;
        var maker = new Maker(this, run, kind, wire, length, holder);
        Connect(run, from, to, maker);
        return new()
        {
            Run = run,
            Kind = kind,
            From = from,
            To = to,
            Conductors = [.. conductors.Skip(start)],
            Holder = holder,
            Wire = wire,
            Length = known,
            Route = route,
        };
    }

    /// <summary>
    /// The ends that names stand for; none if one cannot be found. That a run has no end at all was said when it was read.
    /// </summary>
    private ImmutableArray<RunEnd> Ends(ImmutableArray<Written<string>> names)
    {
        var ends = names.Select(n => table.Find(n, findings)).ToArray();
        return ends.All(e => e is not null) ? [.. ends!] : [];
    }

    /// <summary>The way that a run says it takes; where it says neither that nor a length, the shortest one between its ends.</summary>
    private ImmutableArray<RoutedPath> Route(Run run, ImmutableArray<RunEnd> from, ImmutableArray<RunEnd> to)
    {
        if (run.Length is not null || !run.Along.IsEmpty)
        {
            return [
                .. run.Along.Select(a => (Path: spec.Paths.FirstOrDefault(p => p.Id == a.Value), a.At))
                    .Where(a => a.Path is not null)
                    .Select(a => new RoutedPath(a.Path!, a.At))
            ];
        }

        var ends = to.Select(e => routes.NodeOf(e.Gear)).ToArray();
        return routes.NodeOf(from[0].Gear) is { } start && ends.All(e => e is not null)
            ? [.. routes.Farthest(start, ends!).Select(p => new RoutedPath(p, run.Name.At))]
            : [];
    }

    /// <summary>As written, else that of its way; null if neither is known.</summary>
    private static Meters? Length(Run run, ImmutableArray<RoutedPath> route)
    {
        if (run.Length is { } written)
        {
            return written.Value;
        }

        return route.Length > 0 && route.Length >= run.Along.Length && route.All(r => r.Path.Length is not null)
            ? RouteFinder.Length([.. route.Select(r => r.Path)])
            : null;
    }

    private ProtectiveDevice? Holder(Run run, ImmutableArray<RunEnd> from, ImmutableArray<RunEnd> to, Meters length)
    {
        if (run.Protection is not { } device)
        {
            return null;
        }

        var inBlock = from.Any(e => e.Gear.Joins.Any(j => j is TerminalJoin { FuseMayStandAtRun: true } fuse && fuse.Second == e.Shape));
        if (device.Distance is null && inBlock)
        {
            return null;
        }

        var word = device.Breaker ? "breaker" : "fuse";
        if (device.Distance is null && !device.DistanceIsWritten)
        {
            findings.Add(new(
                "spec/missing",
                Severity.Error,
                $"the {word} of {run.Id} does not say how far along the run it sits",
                device.At)
            {
                Help = $"add at: with the distance from {run.From[0].Value}, such as at: 12 in",
                Subjects = [run.Id],
            });
        }
        else if (device.Distance is { } distance && distance.Value > length)
        {
            findings.Add(new(
                "spec/value",
                Severity.Error,
                $"the {word} of {run.Id} sits {distance} along a run of {run.Length?.Words ?? Quantity.Print(length)}",
                distance.At)
            {
                Help = $"at is measured from {run.From[0].Value}",
                Subjects = [run.Id],
            });
        }

        var at = Min(device.Distance?.Value ?? new Meters(0), length);
        Amps? rating = device.Auto && choices.Fuses.TryGetValue(run.Id, out var chosen) ? chosen : device.Rating.Amps;
        var nearTo = at.Value > length.Value / 2;
        var host = nearTo ? to[0].Gear : from[0].Gear;
        var holder = new ProtectiveDevice
        {
            Name = new($"{run.Id}.{word}", run.Name.Words, device.At),
            Breaker = device.Breaker,
            Rating = rating is { } r
                ? new(r, device.Auto ? Quantity.Print(r) : device.Rating.Words ?? Quantity.Print(r), device.Rating.At ?? device.At)
                : null,
            Style = device.Style,
            Breaking = device.Breaking,
            Reset = device.Reset,
            Facts = GearProperties.None with { Zone = host.Facts.Zone, ZoneName = host.Facts.ZoneName },
        };
        table.Add(holder);
        Holders.Add(holder);
        return holder;
    }

    private void Connect(Run run, ImmutableArray<RunEnd> from, ImmutableArray<RunEnd> to, Maker maker)
    {
        var begins = from.SelectMany(e => e.Nodes).ToImmutableArray();
        var ends = to.SelectMany(e => e.Nodes).ToImmutableArray();
        var coils = ends.Length >= 2
            && ends.Length % 2 == 0
            && to.All(e => e.Gear.SpeakerParts.Any(p => p is VoiceCoil) && e.Nodes.Length % 2 == 0);
        if (begins.Length == 2 && coils && (ends.Length > 2 || run.Hookup is not null))
        {
            ConnectCoils(run, begins, to, maker);
        }
        else if (begins.Length == ends.Length)
        {
            for (var i = 0; i < begins.Length; i++)
            {
                maker.Core(begins[i], ends[i], i, begins.Length);
            }
        }
        else if (begins.Length == 1 && to.All(e => e.Nodes.Length == 1))
        {
            Chain(begins[0], [.. ends], maker, 0, 1);
        }
        else if (ends.Length == 1 && from.All(e => e.Nodes.Length == 1))
        {
            Chain(ends[0], [.. begins], maker, 0, 1);
        }
        else if (begins.Length == 2 && ends.Length % 2 == 0)
        {
            Chain(begins[0], [.. ends.Where((_, i) => i % 2 == 0)], maker, 0, 2);
            Chain(begins[1], [.. ends.Where((_, i) => i % 2 == 1)], maker, 1, 2);
        }
        else if (!from.Concat(to).Any(e => doubtful.Contains(e.Gear.Id)))
        {
            findings.Add(TerminalMistakes.WholeDevice(run, from, to) ?? new("spec/ends-differ", Severity.Error,
                $"{run.Id} begins at {Count(begins.Length)} and ends at {Count(ends.Length)}: they cannot be joined one to one",
                run.To[0].At)
            {
                Help = "name single channels or sides, such as amp.in.left or amp.sub.+, or give the two ends the same number of channels",
                Subjects = [run.Id],
            });
        }
    }

    private static string Count(int conductors) =>
        conductors == 1 ? "one conductor" : $"{conductors.ToString(CultureInfo.InvariantCulture)} conductors";

    /// <summary>The first conductor is the run itself; from end to end it goes on by links.</summary>
    private static void Chain(Terminal begin, ImmutableArray<Terminal> ends, Maker maker, int core, int cores)
    {
        maker.Core(begin, ends[0], core, cores);
        for (var i = 1; i < ends.Length; i++)
        {
            maker.Jumper(ends[i - 1], ends[i], between: true);
        }
    }

    private void ConnectCoils(Run run, ImmutableArray<Terminal> begins, ImmutableArray<RunEnd> to, Maker maker)
    {
        var hookup = run.Hookup;
        if (hookup is null && !run.HookupIsWritten)
        {
            findings.Add(new(
                "spec/hookup-missing",
                Severity.Error,
                $"{run.Id} goes to {to.Sum(e => e.Nodes.Length / 2)} coils and does not say how they are joined",
                run.To[0].At)
            {
                Help = "add hookup: series, parallel or series-parallel; parallel is taken meanwhile",
                Subjects = [run.Id],
            });
        }

        hookup ??= new(HookupWay.Parallel, HookupWay.Parallel, run.Name.At);

        var drivers = new List<(Gear Gear, List<(Terminal Plus, Terminal Minus)> Coils)>();
        foreach (var end in to)
        {
            if (drivers.Count == 0 || !ReferenceEquals(drivers[^1].Gear, end.Gear))
            {
                drivers.Add((end.Gear, []));
            }

            for (var i = 0; i < end.Nodes.Length; i += 2)
            {
                drivers[^1].Coils.Add((end.Nodes[i], end.Nodes[i + 1]));
            }
        }

        var cores = conductors.Count;
        maker.Core(begins[0], begins[0], 0, 2);
        maker.Core(begins[1], begins[1], 1, 2);
        var blocks = drivers.Select(d => Join(d.Coils, hookup.Coils, maker, between: false)).ToList();
        var whole = Join(blocks, hookup.Drivers, maker, between: true);
        maker.Land(cores, whole.Plus, whole.Minus);
    }

    private static (Terminal Plus, Terminal Minus) Join(
        List<(Terminal Plus, Terminal Minus)> parts,
        HookupWay how,
        Maker maker,
        bool between)
    {
        for (var i = 1; i < parts.Count; i++)
        {
            if (how == HookupWay.Series)
            {
                maker.Jumper(parts[i - 1].Minus, parts[i].Plus, between);
            }
            else
            {
                maker.Jumper(parts[i - 1].Plus, parts[i].Plus, between);
                maker.Jumper(parts[i - 1].Minus, parts[i].Minus, between);
            }
        }

        return how == HookupWay.Series ? (parts[0].Plus, parts[^1].Minus) : parts[0];
    }

    /// <summary>What a run carries, by what it is wired to; a run between neutral terminals is settled later, from its net.</summary>
    private static RunKind Kind(ImmutableArray<RunEnd> from, ImmutableArray<RunEnd> to)
    {
        var roles = from.Concat(to).Select(e => e.Shape.Role).ToHashSet();
        return roles.Contains(TerminalRole.Speaker) ? RunKind.Speaker
            : roles.Contains(TerminalRole.Line) ? RunKind.Line
            : roles.Contains(TerminalRole.Control) ? RunKind.Control
            : roles.Contains(TerminalRole.Supply) ? RunKind.Supply
            : roles.Contains(TerminalRole.Ground) ? RunKind.Ground
            : RunKind.Supply;
    }

    private static Meters Min(Meters a, Meters b) => a < b ? a : b;

    /// <summary>Makes the conductors of one run.</summary>
    private sealed class Maker(ConductorBuilder wirer, Run run, RunKind kind, WireProperties wire, Meters length, ProtectiveDevice? holder)
    {
        /// <summary>Indexes of the conductors that are the second core of a pair.</summary>
        private readonly HashSet<int> seconds = [];

        private int jumpers;

        /// <summary>A core from end to end; the first one passes through the inline device.</summary>
        public void Core(Terminal from, Terminal to, int core, int cores)
        {
            var id = cores switch
            {
                1 => run.Id,
                2 => run.Id + (core == 0 ? "+" : "-"),
                _ => $"{run.Id}.{(core / 2) + 1}{(core % 2 == 0 ? "+" : "-")}",
            };
            var shield = wire.IsLinePair && core % 2 == 1;
            if (core == 0 && holder is not null)
            {
                var at = Min(run.Protection!.Distance?.Value ?? new Meters(0), length);
                Add(id + "-1", from, wirer.Table.Of(holder, ProtectiveDevice.In), at, shield, false);
                Add(id + "-2", wirer.Table.Of(holder, ProtectiveDevice.Out), to, length - at, shield, false);
            }
            else
            {
                if (core % 2 == 1)
                {
                    seconds.Add(wirer.conductors.Count);
                }

                Add(id, from, to, length, shield, false);
            }
        }

        /// <summary>
        /// A link between loads of a hookup: between drivers it has the run's link length, between the coils of one it has none.
        /// </summary>
        public void Jumper(Terminal from, Terminal to, bool between)
        {
            jumpers++;
            Add(
                $"{run.Id}.link{jumpers.ToString(CultureInfo.InvariantCulture)}",
                from,
                to,
                between ? run.Link?.Value ?? new Meters(0) : new Meters(0),
                false,
                true);
        }

        /// <summary>Lands the two cores made before the network of coils was known.</summary>
        public void Land(int first, Terminal plus, Terminal minus)
        {
            for (var i = first; i < wirer.conductors.Count; i++)
            {
                var c = wirer.conductors[i];
                if (!c.IsJumper && c.To.Index == c.From.Index)
                {
                    wirer.conductors[i] = c.Changed(seconds.Contains(i) ? minus : plus, c.Kind);
                }
                else if (!c.IsJumper && holder is not null && c.From.Gear == holder)
                {
                    wirer.conductors[i] = c.Changed(plus, c.Kind);
                }
            }
        }

        private void Add(string id, Terminal from, Terminal to, Meters cut, bool shield, bool jumper) =>
            wirer.conductors.Add(new()
            {
                Index = wirer.conductors.Count,
                Id = id,
                RunId = run.Id,
                Kind = kind,
                From = from,
                To = to,
                Wire = wire,
                Length = cut,
                ZoneId = wirer.Hottest(from, to),
                IsShield = shield,
                IsJumper = jumper,
            });
    }

    private string? Hottest(Terminal from, Terminal to)
    {
        var a = from.Gear?.Zone is { } x ? zones.GetValueOrDefault(x) : null;
        var b = to.Gear?.Zone is { } y ? zones.GetValueOrDefault(y) : null;
        return (a is null || (b is not null && b.AmbientOrDefault > a.AmbientOrDefault) ? b : a)?.Id;
    }
}
