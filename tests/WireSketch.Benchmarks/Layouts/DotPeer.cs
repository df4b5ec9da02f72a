using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using WireSketch.Drawing.Layout;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>
/// Graphviz dot with orthogonal lines, boxes of the same sizes, zones as clusters. Its orthogonal router takes no notice of
/// ports, so its wires end anywhere on a box: compare its crossings, not its bends and detour.
/// </summary>
internal sealed class DotPeer : IPeer
{
    private const int TimeLimit = 60_000;
    private const double PointsToInch = 72;

    public string Name => "dot";

    /// <summary>Finds it; null with the reason where it is missing.</summary>
    public static DotPeer? Start(out string why)
    {
        try
        {
            using var dot = Process.Start(new ProcessStartInfo("dot", ["-V"]) { RedirectStandardError = true })!;
            dot.WaitForExit();
            why = "";
            return new DotPeer();
        }
        catch (System.ComponentModel.Win32Exception)
        {
            why = "dot is not installed: the Debian package graphviz";
            return null;
        }
    }

    public Figures? Measure(Subject subject, SheetLayout ours)
    {
        var watch = Stopwatch.StartNew();
        using var dot =
            Process.Start(new ProcessStartInfo("dot", ["-Tjson"])
            {
                RedirectStandardInput = true,
                RedirectStandardOutput = true,
                RedirectStandardError = true
            })!;
        dot.ErrorDataReceived += (_, _) => { };
        dot.BeginErrorReadLine();
        var answer = dot.StandardOutput.ReadToEndAsync();
        dot.StandardInput.Write(Words(subject.Graph, ours));
        dot.StandardInput.Close();
        if (!dot.WaitForExit(TimeLimit))
        {
            dot.Kill();
            return null;
        }

        double seconds = watch.Elapsed.TotalSeconds;
        return dot.ExitCode != 0 ? null : Read(subject, answer.Result) is { } sheet
            ? Figures.Of(subject.Graph, sheet, subject.Options, false, Polyline.Scale, seconds) : null;
    }

    public void Dispose()
    {
    }

    private static string Words(SheetGraph graph, SheetLayout ours)
    {
        var o = new StringBuilder(
            "digraph g { rankdir=LR; splines=ortho; nodesep=.17; ranksep=.6; node [shape=box fixedsize=true label=\"\"]; edge [dir=none "
                + "fontsize=7];\n");
        for (int z = 0; z < graph.Zones.Length; z++)
        {
            o.Append(CultureInfo.InvariantCulture, $"subgraph cluster_{z} {{\n");
            for (int d = 0; d < graph.Devices.Length; d++)
            {
                if (graph.Devices[d].Zone == z)
                {
                    o.Append(
                        CultureInfo.InvariantCulture,
                        $"n{d} [width={ours.Devices[d].Box.Width / PointsToInch:0.####} "
                            + $"height={ours.Devices[d].Box.Height / PointsToInch:0.####}];\n");
                }
            }

            o.Append("}\n");
        }

        var device = graph.Devices.SelectMany((d, i) => d.Ports.Select(p => (p.Id, i)))
            .ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        for (int w = 0; w < graph.Wires.Length; w++)
        {
            for (int k = 0; k < graph.Wires[w].To.Length; k++)
            {
                o.Append(
                    CultureInfo.InvariantCulture,
                    $"n{device[graph.Wires[w].From]} -> n{device[graph.Wires[w].To[k]]} [id=\"{w} "
                        + $"{k}\"{(k == 0 && graph.Wires[w].LabelWidth > 0 ? $" xlabel=\"{graph.Wires[w].Id} 00 AWG\"" : "")}];\n");
            }
        }

        return o.Append("}\n").ToString();
    }

    private static SheetLayout? Read(Subject subject, string json)
    {
        using var document = JsonDocument.Parse(json);
        var root = document.RootElement;
        double[] page = Numbers(root.GetProperty("bb").GetString()!);
        var boxes = new GridRect[subject.Graph.Devices.Length];
        foreach (var o in root.GetProperty("objects").EnumerateArray().Where(o => o.TryGetProperty("pos", out _)))
        {
            double[] at = Numbers(o.GetProperty("pos").GetString()!);
            double w = Number(o, "width") * PointsToInch, h = Number(o, "height") * PointsToInch;
            boxes[int.Parse(o.GetProperty("name").GetString()!.AsSpan(1), CultureInfo.InvariantCulture)] = Polyline.Box(
                at[0] - (w / 2), page[3] - at[1] - (h / 2), w, h);
        }

        var wires = subject.Graph.Wires.Select(w => new ImmutableArray<GridPoint>[w.To.Length]).ToArray();
        var labels = new GridRect[wires.Length];
        foreach (var e in root.GetProperty("edges").EnumerateArray())
        {
            int[] id = [.. e.GetProperty("id").GetString()!.Split(' ').Select(s => int.Parse(s, CultureInfo.InvariantCulture))];
            if (!e.TryGetProperty("pos", out var pos))
            {
                return null;
            }

            // A curve is given by a point and three more for each part; those of an orthogonal one are straight.
            var points = pos.GetString()!.Split(' ').Where(p => !p.StartsWith('e') && !p.StartsWith('s')).Select(Numbers).ToArray();
            wires[id[0]][id[1]] = Polyline.Corners(points.Where((_, k) => k % 3 == 0).Select(p => Polyline.Point(p[0], page[3] - p[1])));
            if (e.TryGetProperty("xlp", out var label))
            {
                double[] at = Numbers(label.GetString()!);
                var link = subject.Graph.Wires[id[0]];
                labels[id[0]] = Polyline.Box(
                    at[0] - (link.LabelWidth / 2.0),
                    page[3] - at[1] - (link.LabelHeight / 2.0),
                    link.LabelWidth,
                    link.LabelHeight);
            }
        }

        // Where a wire ends is its terminal.
        var ends = new Dictionary<string, GridPoint>(StringComparer.Ordinal);
        var devices = subject.Graph.Devices.Select((d, i) =>
            new PlacedDevice(d.Id, boxes[i], [.. d.Ports.Select(p => new PlacedPort(p.Id, ends.GetValueOrDefault(p.Id), p.Side))]));
        return new(
            Polyline.Box(0, 0, page[2], page[3]),
            [],
            [],
            [.. devices],
            [.. subject.Graph.Wires.Select((w, k) => new RoutedWire(w.Id, [.. wires[k]], labels[k], []))],
            new([]));
    }

    private static double Number(JsonElement o, string name) =>
        double.Parse(o.GetProperty(name).GetString()!, CultureInfo.InvariantCulture);

    private static double[] Numbers(string words) => [.. words.Split(',').Select(s => double.Parse(s, CultureInfo.InvariantCulture))];
}
