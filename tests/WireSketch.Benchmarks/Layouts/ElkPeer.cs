using System.Collections.Immutable;
using System.Diagnostics;
using System.Text.Json;
using WireSketch.Drawing.Layout;
using WireSketch.Testing;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>
/// elkjs layered, with the boxes of our layout and the same zones as partitions. Terminals are on the same sides: those that
/// we may change are free for it too, unless their device has others above or below, which it cannot keep there alone; then
/// it is given the sides that we found.
/// </summary>
internal sealed class ElkPeer : IPeer
{
    /// <summary>Its usual thoroughness is 7; more makes its crossings fewer and its time longer.</summary>
    private const int Thorough = 200, Usual = 7, ThoroughTo = 60;

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    private readonly Process node;

    private ElkPeer(Process node) => this.node = node;

    public string Name => "elk";

    /// <summary>Starts it; null with the reason where it cannot run.</summary>
    public static ElkPeer? Start(out string why)
    {
        string script = Path.Combine(Repository.Root, "tests", "WireSketch.Benchmarks", "peers", "elk.mjs");
        string at = Environment.GetEnvironmentVariable("ELKJS_AT") ?? Path.GetDirectoryName(script)!;
        if (!Directory.Exists(Path.Combine(at, "node_modules", "elkjs")))
        {
            why = "elkjs is not installed: npm ci --prefix tests/WireSketch.Benchmarks/peers, or name its folder in ELKJS_AT";
            return null;
        }

        try
        {
            var info = new ProcessStartInfo(
                "node", ["--stack-size=4000", script])
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                Environment = { ["ELKJS_AT"] = at }
            };
            why = "";
            return new ElkPeer(Process.Start(info)!);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            why = "node is not installed";
            return null;
        }
    }

    public Figures? Measure(Subject subject, SheetLayout ours)
    {
        var graph = subject.Graph;
        node.StandardInput.WriteLine(JsonSerializer.Serialize(
            new
            {
                thoroughness = graph.Devices.Length <= ThoroughTo ? Thorough : Usual,
                devices = graph.Devices.Select((d, i) =>
                    new
                    {
                        d.Id,
                        d.Zone,
                        ours.Devices[i].Box.Width,
                        ours.Devices[i].Box.Height,
                        Free = IsFree(d),
                        ports = d.Ports.Select(
                        (p, k) => new { p.Id, side = ours.Devices[i].Ports[k].Side.ToString() })
                    }),
                wires = graph.Wires.Select(w => new { w.Id, w.From, w.To, w.LabelWidth, w.LabelHeight }),
            },
            Json));
        node.StandardInput.Flush();
        var answer = JsonSerializer.Deserialize<Answer>(node.StandardOutput.ReadLine()!, Json)!;
        if (answer.Error is not null)
        {
            return null;
        }

        var devices = graph.Devices.Select((d, i) => new PlacedDevice(
            d.Id, Polyline.Box(answer.Devices[i].Box[0], answer.Devices[i].Box[1], answer.Devices[i].Box[2], answer.Devices[i].Box[3]),
            [
                .. d.Ports.Select((p, k) =>
                    new PlacedPort(p.Id, Polyline.Point(answer.Devices[i].Ports[k][0], answer.Devices[i].Ports[k][1]), p.Side))
            ]));
        int next = 0;
        var wires = new List<RoutedWire>();
        foreach (var w in graph.Wires)
        {
            double[]? label = answer.Labels[next];
            var polylines = answer.Polylines.Skip(next)
                .Take(w.To.Length)
                .Select(c => Polyline.Corners(c.Select(p => Polyline.Point(p[0], p[1]))))
                .ToImmutableArray();
            wires.Add(new(w.Id, polylines, label is null ? default : Polyline.Box(label[0], label[1], label[2], label[3]), []));
            next += w.To.Length;
        }

        var size = new GridRect(0, 0, Polyline.Whole(answer.Width), Polyline.Whole(answer.Height));
        var sheet = new SheetLayout(size, [], [], [.. devices], [.. wires], new([]));
        return Figures.Of(graph, sheet, subject.Options, false, Polyline.Scale, answer.Milliseconds / 1000);
    }

    public void Dispose()
    {
        node.StandardInput.Close();
        if (!node.WaitForExit(2000))
        {
            node.Kill();
        }

        node.Dispose();
    }

    private static bool IsFree(DeviceBox device) =>
        (device.Shape is DeviceShape.Slim or DeviceShape.Holder || device.Ports.All(p => p.Free))
            && device.Ports.All(p => p.Side is PortSide.Left or PortSide.Right);

    private sealed record Answer(
        double Width, double Height, Placed[] Devices, double[][][] Polylines, double[]?[] Labels, double Milliseconds, string? Error);

    private sealed record Placed(double[] Box, double[][] Ports);
}
