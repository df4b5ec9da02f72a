using System.Collections.Immutable;
using WireSketch.Quantities;
using static WireSketch.Language.TerminalShape;

namespace WireSketch.Language.Kinds;

/// <summary>Turns speaker level into line level.</summary>
public sealed record LevelAdapter : Gear
{
    public override string Kind => "level adapter";

    /// <summary>Its positive terminal.</summary>
    public static TerminalShape Positive { get; } = Node("+", TerminalRole.Supply, TerminalFlow.In);

    /// <summary>Its negative terminal.</summary>
    public static TerminalShape Negative { get; } = Node("-", TerminalRole.Ground);

    /// <summary>By which it switches others on.</summary>
    public static TerminalShape RemoteOut { get; } = Node("remote-out", TerminalRole.Control, TerminalFlow.Out);

    public TerminalShape In => Group("in", TerminalRole.Speaker, TerminalFlow.In, ChannelNames(Channels));

    public TerminalShape Out => Group("out", TerminalRole.Line, TerminalFlow.Out, ChannelNames(Channels));

    public override ImmutableArray<TerminalShape> Terminals => [In, Out, Positive, Negative, RemoteOut];

    public int Channels { get; init; } = 2;

    /// <summary>Output voltage over input voltage.</summary>
    public Written<double>? Ratio { get; init; }

    public Written<Volts>? Output { get; init; }

    /// <summary>What each of its inputs presents to the source.</summary>
    public Written<Ohms>? Load { get; init; }

    /// <summary>Highest voltage its inputs take.</summary>
    public Written<Volts>? Maximum { get; init; }

    /// <summary>What of the source reaches the next device, and the reverse.</summary>
    public ImmutableArray<Written<AdapterPass>> Passes { get; init; } = [];

    public Written<Amps>? Current { get; init; }

    public override ImmutableArray<SupplySource> Sources => [];

    public override ImmutableArray<PowerInput> PowerInputs =>
    [
        new()
        {
            Plus = Positive, Minus = Negative, IsOptional = true, IsCritical = false, OwnFuse = null, Fits = null,
            Takes = new SmallCircuitDraw { Current = Current, Usual = new(0.1) },
        },
    ];

    public override ImmutableArray<InternalJoin> Joins => [];

    public override ImmutableArray<TurnOnInput> TurnOnInputs => [];

    public override ImmutableArray<TurnOnOutput> TurnOnOutputs => [new() { Terminal = RemoteOut, FedFrom = Positive, Limit = null }];

    public override ImmutableArray<SignalInput> SignalInputs =>
    [
        .. In.Members.Select(channel => new SignalInput
        {
            Terminal = channel, Line = Accepts(takes: false), Speaker = Accepts(takes: true), Usual = SignalLevel.Speaker,
            SwitchedLoad = null,
        }),
    ];

    public override ImmutableArray<SignalOutput> SignalOutputs =>
    [
        .. Out.Members.Zip(In.Members, (to, from) => new SignalOutput
        {
            Terminal = to,
            Group = "out",
            DeclaredAt = Name.At,
            MayBeFirst = false,
            Level = SignalLevel.Line,
            CarriesOn = [from],
            Ratio = Ratio,
            Maximum = Output,
            ChangesLevel = true,
            PassesDcOffset = Lets(AdapterPass.DcOffset),
        }),
    ];

    public override bool MustBeReached => true;

    public override ImmutableArray<SpeakerPart> SpeakerParts =>
    [
        .. In.Members.Zip(Out.Members)
            .SelectMany(channel => (Load is { } own ? [new ResistorPart(channel.First, null, own.Value)] : Array.Empty<SpeakerPart>())
                .Concat(Lets(AdapterPass.Load) ? [new PassedLoadPart(channel.First, channel.Second)] : [])),
    ];

    public override ChannelSettings DeviceSettings => ChannelSettings.None;

    public override ImmutableArray<TerminalShape> Alone => [];

    public override ImmutableArray<TerminalAlias> Aliases => [];

    public override Landing LandingAt(TerminalShape terminal) => Landing.Clamp;

    public override DrawnSide SideOf(TerminalShape terminal) => DrawnSide.ByFlow;

    public override GearDrawing Drawing => new()
    {
        Symbol = DeviceSymbol.Processor,
        Family = DeviceFamily.SoundDevice,
        Form = DrawnForm.Box,
        IsHub = true,
        HasFreeSides = false,
        PlaysSound = false,
        PlugsIn = false,
        Words = Kind,
        PlainWords = "signal adapter",
    };

    public override GearListing Listing => new()
    {
        As = ListedAs.Device,
        Facts = GearListing.Known(GearListing.Count(Channels, "channel")),
    };

    public override ImmutableArray<GearCaution> Cautions => [];

    public override JointLimits JointLimits => JointLimits.None;

    public override StudCover StudCover => StudCover.NoneOpen;

    private bool Lets(AdapterPass what) => Passes.Any(p => p.Value == what);

    private SignalAcceptance Accepts(bool takes) => new(takes, Maximum is { } most ? new(new(0), most.Value) : null, Maximum?.At);

    internal static LevelAdapter Read(Fields f)
    {
        f.Choose(needed: false, "ratio", "output");
        return ReadFacts(f);
    }

    private static LevelAdapter ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Channels = f.Count("channels", "number of channels", "2")?.Value ?? 2,
        Ratio = f.Number("ratio", "output voltage over input voltage"),
        Output = f.Amount<Volts>("output", "highest output voltage"),
        Load = f.Amount<Ohms>("load", "the load that each input presents to the source"),
        Maximum = f.Amount<Volts>("maximum", "highest voltage its inputs take"),
        Passes = f.Choices("passes", "what of the source reaches through it", AdapterPasses.Words),
        Current = f.Amount<Amps>("current", "draw, if it is powered", zero: true),
    };
}

/// <summary>What of the source reaches through a level adapter.</summary>
public enum AdapterPass
{
    DcOffset,
    Load,
}

/// <summary>The words of <see cref="AdapterPass"/>.</summary>
public static class AdapterPasses
{
    public static ChoiceWords<AdapterPass> Words { get; } = new((AdapterPass.DcOffset, "dc offset"), (AdapterPass.Load, "load"));
}
