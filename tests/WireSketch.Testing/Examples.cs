namespace WireSketch.Testing;

/// <summary>Specs that several tests start from.</summary>
public static class Examples
{
    /// <summary>
    /// The small whole example of the language's description: the radio stays, one amplifier is added. The job is invented.
    /// </summary>
    public const string BassUpgrade = """
        wiresketch: 1

        job:
          title: Bass upgrade, radio stays
          reference: TM-0412
          shop: Quillmarsh Mobile Sound
          date: 2026-10-30
          vehicle: { description: 2018 Marlow Brindle hatchback, alternator: 90 A }

        gear:
          battery: { is: battery, zone: engine bay, origin: factory, capacity: 60 Ah, internal: 8 mohm }
          radio:
            is: head unit
            zone: dash
            origin: factory
            outputs:
              front: { level: speaker, channels: 2, maximum: 9 V }
            behavior: { mutes-without-load: 60 ohm }
          adapter: { is: level adapter, zone: dash, channels: 2, output: 4.5 V, passes: [dc offset, load] }
          amp:
            is: amplifier
            zone: cabin
            place: under the passenger seat
            supply: { fuse: 40 A, efficiency: 80 % }
            wakes-on: [remote, dc offset]
            input: { line: 0.1 V to 5 V, load: 60 ohm }
            channels:
              sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm }
            settings: { low-pass: 80 Hz, wake: dc offset, input-load: on }
          sub: { is: subwoofer, zone: rear, coils: 2 x 4 ohm, handles: 400 W, enclosure: { type: vented, tuned: 34 Hz } }
          seat-bolt: { is: chassis point, zone: cabin, surface: bare metal }

        runs:
          P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 17 ft, fuse: { rating: 60 A, at: 12 in }, through: firewall grommet, protect: loom }
          G1: { from: amp.-, to: seat-bolt, wire: 4 AWG black, length: 14 in }
          T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true }
          L1: { from: adapter.out, to: amp.in, wire: line pair, length: 12 ft }
          S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }

        """;
}
