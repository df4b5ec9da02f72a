using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>A remote level knob.</summary>
public sealed record LevelControl : Gear
{
    public override string Kind => "level control";

    public static TerminalShape Plug { get; } = Node("to", TerminalRole.Control, TerminalFlow.Out);

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Plug];

    /// <summary>The device it is plugged into.</summary>
    public Written<string>? To { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Knob,
        Family = DeviceFamily.SoundDevice,
        Form = DrawnForm.SlimBox,
        IsHub = false,
        HasFreeSides = false,
        PlaysSound = false,
        PlugsIn = true,
        Words = To is { } to ? $"{Kind}, plugs into {to.Value}" : Kind,
        PlainWords = Kind,
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(To is { } to ? $"plugs into {to.Value}" : null),
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    internal static LevelControl Read(Fields f)
    {
        f.Require("to");
        return new() { Name = f.Key, To = f.Text("to", "the device it is plugged into") };
    }
}
