using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Testing;

/// <summary>
/// A kind of gear that the product does not know: a charger of 13.8 V with a switch inside. It says of itself what the contract asks, so
/// that
/// every consumer can be held to it.
/// </summary>
public sealed record ShopCharger : Gear
{
    public static TerminalShape Out { get; } = TerminalShape.Node("out", TerminalRole.Supply, TerminalFlow.Out);

    public static TerminalShape Home { get; } = TerminalShape.Node("home", TerminalRole.Ground);

    public static TerminalShape Switched { get; } = TerminalShape.Node("switched", TerminalRole.Supply, TerminalFlow.Out);

    public override string Kind => "shop charger";

    public override ImmutableArray<TerminalShape> Terminals { get; } = [Out, Home, Switched];

    public override ImmutableArray<SupplySource> Sources =>
    [
        new ChargerSource
        {
            Plus = Out,
            Minus = Home,
            LiveIn = SystemStates.All,
            Voltage = new(new Volts(13.8), "13.8 V", Name.At),
            Current = new(new Amps(40), "40 A", Name.At),
        },
    ];

    public override ImmutableArray<PowerInput> PowerInputs => [];

    public override ImmutableArray<InternalJoin> Joins =>
    [
        new TerminalJoin
        {
            Kind = ConnectionKind.Switch,
            First = Out,
            Second = Switched,
            ClosedIn = SystemStates.EngineRuns,
            Rating = new(new Amps(30), "30 A", Name.At),
        },
    ];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [];

    public override ImmutableArray<SignalInput> SignalInputs => [];

    public override ImmutableArray<SignalOutput> SignalOutputs => [];

    public override bool MustBeReached => false;

    public override ImmutableArray<SpeakerPart> SpeakerParts => [];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => terminal == Home ? Landing.Clamp : Landing.UsualStud("M10 stud");

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Source,
        Family = DeviceFamily.Source,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = true,
        PlaysSound = false,
        PlugsIn = false,
        Words = "shop charger, 13.8 V",
        PlainWords = "charger of the shop",
    };

    public override GearListing Listing => new() { As = ListedAs.Device, Facts = ["13.8 V", "40 A"] };

    public override ImmutableArray<GearCaution> Cautions => [GearCaution.OwnCurrent];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    /// <summary>A spec of a lamp that such a charger, called <c>rack</c>, feeds through its switch.</summary>
    public static Spec System()
    {
        var file = new SourceFile("a.wsk.yaml", """
            wiresketch: 1
            gear:
              work: { is: lamp, zone: cargo, power: 48 W }
              bolt: { is: chassis point, zone: cargo, surface: bare metal }
            runs:
              P1: { from: rack.switched, to: work.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: work.-, to: bolt, wire: 10 AWG black, length: 8 ft }
              G2: { from: rack.home, to: bolt, wire: 10 AWG black, length: 8 ft }
            """);
        var read = SpecReader.Read(file, FilesInMemory.None);
        var rack = new ShopCharger
        {
            Name = new("rack", "rack", file.Start),
            Facts = GearProperties.None with { Zone = new("cargo", "cargo", file.Start) }
        };
        return read.Value with { Gear = [rack, .. read.Value.Gear] };
    }
}
