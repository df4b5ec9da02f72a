using WireSketch.Documents;
using WireSketch.Installation;
using WireSketch.Testing;

namespace WireSketch.Tests.Documents;

/// <summary>A spec with its papers.</summary>
internal sealed class Built
{
    private Built(Compilation result) => Result = result;

    public Compilation Result { get; }

    public InstalledSystem Install => Result.Install ?? throw new InvalidOperationException(string.Join('\n', Result.Findings));

    public PaperSet Papers => PaperSet.From(Result.ForPapers);

    public static Built From(Compilation result) => new(result);

    public static Built Shipped(string name) => new(Compiler.Compile(ShippedSpecs.Open($"specs/{name}.wsk.yaml"), ShippedSpecs.Files));

    /// <summary>
    /// A spec with a battery, an amplifier of one channel, a subwoofer of two coils and a chassis point, and these lines.
    /// </summary>
    public static Built Of(string runs, string more = "") => new(Compiler.Compile(new("a.wsk.yaml", $$"""
        wiresketch: 1
        job: { title: A job, vehicle: { description: a car, alternator: 90 A } }
        {{more}}
        gear:
          battery: { is: battery, zone: engine bay, origin: factory, capacity: 60 Ah }
          switched: { is: ignition source, zone: dash, origin: factory }
          amp:
            is: amplifier
            zone: cabin
            supply: { fuse: 40 A }
            wakes-on: remote
            channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } }
            settings: { wake: remote }
          sub: { is: subwoofer, zone: rear, coils: 2 x 4 ohm, handles: 400 W, enclosure: { type: vented, tuned: 40 Hz } }
          bolt: { is: chassis point, zone: cabin, surface: bare metal }
        runs:
        {{runs.ReplaceLineEndings("\n  ").Insert(0, "  ")}}
        """), FilesInMemory.None));

    public string Text(string paper) => System.Text.Encoding.UTF8.GetString(Papers.Papers.Single(p => p.Name == paper).Bytes.Span);
}
