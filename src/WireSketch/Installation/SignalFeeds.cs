using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Where in the file a signal input is fed, and what feeds it.</summary>
internal static class SignalFeeds
{
    /// <summary>Full name of an input: <c>amp.in.left</c>.</summary>
    public static string Name(SignalResult input) => $"{input.Gear.Id}.{input.Input}";

    /// <summary>Full names of inputs as one subject: the group where it is all of it.</summary>
    public static string Names(IEnumerable<SignalResult> inputs)
    {
        var all = inputs.ToArray();
        return all.Length == 1
            ? Name(all[0])
            : $"{all[0].Gear.Id}.{all[0].Input[..all[0].Input.LastIndexOf('.')]} "
                + $"({string.Join(", ", all.Select(i => i.Input[(i.Input.LastIndexOf('.') + 1)..]))})";
    }

    /// <summary>The run that feeds an input; null if none lands on it.</summary>
    public static WiredRun? RunOf(Wiring wiring, SignalResult input) => ChannelWiring.RunsAt(wiring, Name(input)).FirstOrDefault();

    /// <summary>Where to point for an input: its end of the run that feeds it, else the device.</summary>
    public static SourceSpan PlaceOf(Wiring wiring, SignalResult input) =>
        RunOf(wiring, input) is { } run ? EndAt(run, input.Gear) : input.Gear.Name.At;

    /// <summary>The end of a run that is at a device.</summary>
    public static SourceSpan EndAt(WiredRun run, Gear gear) =>
        run.To.Concat(run.From).FirstOrDefault(e => ReferenceEquals(e.Gear, gear))?.At ?? run.Run.Name.At;

    /// <summary>The inputs that a channel's signal comes from: of its own name, or all of a device with a single channel.</summary>
    public static ImmutableArray<SignalResult> InputsOf(InstalledSystem install, ChannelResult channel) =>
        SignalRoles.Amplifies(channel.Gear)
            ? [.. install.Answers.Signals.Where(s => ReferenceEquals(s.Gear, channel.Gear) && IsFor(s, channel))]
            : [];

    private static bool IsFor(SignalResult signal, ChannelResult channel) =>
        SignalRoles.AmplifiesOneChannel(channel.Gear)
            || signal.Input == "in." + channel.Channel
            || signal.Input == "in." + channel.BridgedWith;

    /// <summary>Settings of the output that feeds an input, and of its device; those of an amplifier count at its own channels.</summary>
    public static ImmutableArray<ChannelSettings> SettingsOf(InstalledSystem install, SignalResult input) =>
        SourceOf(install, input) is ({ } gear, var name) && OutputOf(gear, name) is { Amplifies: null } output
            ? [output.Settings, gear.DeviceSettings]
            : [];

    /// <summary>The device that feeds an input, and which of its outputs: <c>sub.left</c>.</summary>
    public static (Gear? Gear, string Output) SourceOf(InstalledSystem install, SignalResult input)
    {
        if (input.FedBy is not { } name || name.IndexOf('.', StringComparison.Ordinal) is not (> 0 and var dot))
        {
            return (input.FedBy is { } whole ? install.Wiring.GearById.GetValueOrDefault(whole) : null, "");
        }

        return (install.Wiring.GearById.GetValueOrDefault(name[..dot]), name[(dot + 1)..]);
    }

    /// <summary>An output of a device by its name, or the first of a group of that name; null if it has none of that name.</summary>
    public static SignalOutput? OutputOf(Gear? gear, string name) =>
        gear?.SignalOutputs.FirstOrDefault(o => o.Terminal.Name == name || o.Group == name);
}
