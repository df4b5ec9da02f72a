using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

/// <summary>Every kind of gear says of itself what others ask, and says it of terminals that it has.</summary>
public sealed class GearContractTests
{
    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_kind_speaks_only_of_its_own_terminals(string kind)
    {
        var gear = Make(kind);
        var own = gear.Terminals.Concat(gear.Terminals.SelectMany(t => t.Members))
            .Select(t => (t.Name, t.Form, t.Role, t.Flow))
            .ToHashSet();

        Assert.All(Named(gear), t => Assert.Contains((t.Name, t.Form, t.Role, t.Flow), own));
    }

    /// <summary>
    /// A supply terminal gives, takes or passes current on; only a capacitor, into which none flows, and the plug of a level control do
    /// none of these.
    /// </summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_supply_and_control_terminal_has_a_part_to_play(string kind)
    {
        var gear = Make(kind);
        var used = Parts(gear).ToHashSet();
        var idle = gear.Terminals.Where(t =>
            t is { Form: TerminalForm.Node, Role: TerminalRole.Supply or TerminalRole.Control } && !used.Contains(t))
            .Select(t => t.Name);

        string[] none = kind switch { "capacitor" => ["+"], "level control" => ["to"], _ => [] };
        Assert.Equal(none, idle);
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_terminal_has_a_landing_and_a_side(string kind)
    {
        var gear = Make(kind);
        foreach (var terminal in gear.Terminals.Concat(gear.Terminals.SelectMany(t => t.Members)))
        {
            var landing = gear.LandingAt(terminal);
            Assert.Equal(landing.Form is LandingForm.Stud or LandingForm.BodyBolt or LandingForm.PushOn, landing.Size.Length > 0);
            Assert.True(Enum.IsDefined(gear.SideOf(terminal)));
        }
    }

    /// <summary>
    /// What stands where must agree: a ground point is drawn as one and bought by nobody, a bar has one node, a slim box has few
    /// terminals.
    /// </summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Form_lists_and_terminals_agree(string kind)
    {
        var gear = Make(kind);
        Assert.NotNull(gear.Drawing.Words);
        Assert.NotEmpty(gear.Kind);
        Assert.Equal(gear.Drawing.Form == DrawnForm.GroundPoint, gear.LandingAt(gear.Terminals.First()).Form == LandingForm.BodyBolt);
        Assert.True(gear.Drawing.Form != DrawnForm.Bar || gear.Terminals.Length == 1);
        Assert.True(gear.Listing.Connection is null || gear.Listing.As == ListedAs.PlaceOnVehicle);
        Assert.All(gear.Sources, s => Assert.Equal(s is VehicleCircuit, s.Minus is null));
    }

    [Fact]
    public void A_battery_gives_and_comes_home_by_its_posts()
    {
        var source = Assert.IsType<BatterySource>(Assert.Single(Make("battery").Sources));
        Assert.Equal((Battery.Positive, Battery.Negative), (source.Plus, source.Minus));
        Assert.Equal(SystemStates.All, source.LiveIn);
    }

    /// <summary>Terminal numbers after DIN 72552: 30 in, 87 normally open, 87a normally closed, 85 and 86 the coil.</summary>
    [Fact]
    public void A_relay_joins_30_to_87_when_its_coil_pulls_in_and_to_87a_when_it_falls_off()
    {
        var joins = Make("relay").Joins.Cast<TerminalJoin>()
            .Select(j => (j.First.Name, j.Second!.Name, j.Drive!.Plus.Name, j.Drive.Minus.Name, j.Drive.ClosesPulledIn));
        Assert.Equal([("30", "87", "86", "85", true), ("30", "87a", "86", "85", false)], joins);
    }

    public static TheoryData<string> Kinds() => [.. GearKinds.All.Select(k => k.Word)];

    private static IEnumerable<TerminalShape> Named(Gear gear) => [.. Parts(gear), .. gear.Alone, .. gear.Aliases.Select(a => a.Terminal)];

    private static IEnumerable<TerminalShape> Parts(Gear gear) =>
    [
        .. gear.Sources.SelectMany(s => new[] { s.Plus, s.Minus }).OfType<TerminalShape>(),
        .. gear.PowerInputs.SelectMany(p => new[] { p.Plus, p.Minus }),
        .. gear.Joins.SelectMany(j => j switch
        {
            TerminalJoin t => new[] { t.First, t.Second, t.Drive?.Plus, t.Drive?.Minus }.OfType<TerminalShape>(),
            AcrossJoin a => a.Own,
            _ => [],
        }),
        .. gear.TurnOnInputs.Select(i => i.Terminal), .. gear.TurnOnOutputs.SelectMany(o => new[] { o.Terminal, o.FedFrom }),
        .. gear.SignalInputs.Select(i => i.Terminal), .. gear.SignalOutputs.SelectMany(o => o.CarriesOn.Add(o.Terminal)),
        .. gear.SpeakerParts.SelectMany(p => p switch
        {
            VoiceCoil c => [c.Terminal],
            ResistorPart r => new[] { r.First, r.Second }.OfType<TerminalShape>(),
            InputLoadPart i => [i.Input],
            PassedLoadPart p2 => [p2.Input, p2.Output],
            CrossoverWay w => [w.Input, w.Output],
            _ => Array.Empty<TerminalShape>(),
        }),
    ];

    private static Gear Make(string kind) =>
        Assert.Single(
            SpecReader.Read(
                new SourceFile("a.wsk.yaml", Example.Whole($"gear: {{ a: {{ is: {kind}, {Needed(kind)} }} }}")),
                FilesInMemory.None).Value.Gear);

    private static string Needed(string kind) => kind switch
    {
        "lamp" or "motor" or "pump" or "fridge" or "inverter" or "general load" => "power: 5 W",
        "fuse block" => "outputs: 2",
        "amplifier" =>
            "channels: { b: { power: { 4 ohm: 50 W } } }, input: { speaker: 1 V to 9 V, load: 47 ohm }, settings: { input-load: on }",
        "processor" => "inputs: { in: { channels: 2 } }, outputs: { front: { channels: 2 } }",
        "head unit" => "outputs: { front: { level: speaker } }",
        "passive crossover" => "outputs: { b: {} }",
        "load resistor" => "resistance: 60 ohm, across: b",
        "level adapter" => "load: 60 ohm, passes: [load]",
        "level control" => "to: a",
        "tap point" => "carries: constant",
        "speaker" => "coils: 1 x 4 ohm",
        _ => "notes: none",
    };
}
