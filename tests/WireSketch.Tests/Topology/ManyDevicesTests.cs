using System.Text;
using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Tests.Topology;

/// <summary>What a spec of very many devices costs, measured in memory that is asked for: the same on every machine.</summary>
public sealed class ManyDevicesTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Four_times_the_devices_cost_about_four_times_as_much(bool wired)
    {
        Cost(100, wired);
        var (few, many) = (Cost(1000, wired), Cost(4000, wired));

        Assert.InRange((double)many / few, 3, 6);
    }

    private static long Cost(int lamps, bool wired)
    {
        var text = new StringBuilder(
            "wiresketch: 1\njob: { title: lamps }\ngear:\n  battery: { is: battery, capacity: 60 Ah }\n  bolt: { is: chassis point, "
                + "surface: bare metal }\n");
        for (var i = 0; i < lamps; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"  lamp{i}: {{ is: lamp, power: 10 W }}\n");
        }

        text.Append(wired ? "runs:\n" : "");
        for (var i = 0; i < (wired ? lamps : 0); i++)
        {
            text.Append(
                System.Globalization.CultureInfo.InvariantCulture,
                $"  W{i}: {{ from: battery, to: lamp{i}, wire: 14 AWG, length: 3 ft }}\n");
        }

        var spec = SpecReader.Read(new SourceFile("a", text.ToString()), FilesInMemory.None).Value;
        var before = GC.GetAllocatedBytesForCurrentThread();
        var wiring = WiringResolver.Resolve(spec, SizeChoices.None).Value;
        var cost = GC.GetAllocatedBytesForCurrentThread() - before;
        Assert.Equal(lamps, wiring.Loads.Length);
        return cost;
    }
}
