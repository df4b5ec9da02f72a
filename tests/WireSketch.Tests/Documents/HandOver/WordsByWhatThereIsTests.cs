namespace WireSketch.Tests.Documents.HandOver;

/// <summary>Papers speak of what there is.</summary>
public sealed class WordsByWhatThereIsTests
{
    [Fact]
    public void A_camper_without_music_plays_none_and_sets_no_gain()
    {
        var camper = Built.Shipped("camper");
        var (handover, setup) = (camper.Text("handover.md"), camper.Text("setup.md"));
        Assert.DoesNotContain("music plays", handover, StringComparison.Ordinal);
        Assert.Contains("the battery that starts the engine is not drawn on", handover, StringComparison.Ordinal);
        Assert.All(
            ["## Filters", "## Gain", "## Time and phase", "speaker pair", "Gains lowest"],
            w => Assert.DoesNotContain(w, setup, StringComparison.Ordinal));
    }

    /// <summary>
    /// 30 Ah of 60 Ah may be taken; 4.76 A for the radio's 60 W at 12.6 V and what the amplifier takes in music make some three hours.
    /// </summary>
    [Fact]
    public void Music_with_the_engine_off_counts_the_radio()
    {
        var built = Built.Shipped("one-amplifier");
        Assert.Contains(
            "music plays about 3 hours before the battery may be too flat to start",
            built.Text("handover.md"),
            StringComparison.Ordinal);
        Assert.Contains("## Gain", built.Text("setup.md"), StringComparison.Ordinal);
    }

    /// <summary>30 mA for the parked vehicle is common practice, no published source: 30 Ah last 1000 h, 41 days.</summary>
    [Fact]
    public void Current_at_rest_counts_the_vehicle_and_says_what_counts_as_nothing()
    {
        var built = Built.Shipped("one-amplifier");
        Assert.Equal(0.03, built.Install.Answers.Energy.StandbyCurrent.Value, 1e-12);
        Assert.Equal(41, Math.Floor(built.Install.Answers.Energy.StandbyTime!.Value.Value / 86400));
        Assert.Contains(
            "30 mA of it the vehicle itself; radio and amp counted as nothing",
            built.Text("setup.md"),
            StringComparison.Ordinal);
        Assert.Contains("about 41 days", built.Text("handover.md"), StringComparison.Ordinal);
    }
}
