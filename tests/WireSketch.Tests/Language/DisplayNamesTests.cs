using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

/// <summary>Names for people: as written, else made from ids.</summary>
public sealed class DisplayNamesTests
{
    [Theory]
    [InlineData("rear-stud", "chassis point", "Rear stud")]
    [InlineData("usb", "general load", "USB")]
    [InlineData("usb-3-b", "general load", "USB 3 b")]
    [InlineData("led-bar", "lamp", "LED bar")]
    [InlineData("dc-dc", "isolator", "DC-DC")]
    [InlineData("minus", "bus bar", "Negative bus")]
    [InlineData("plus", "bus bar", "Positive bus")]
    [InlineData("negative-2", "bus bar", "Negative bus 2")]
    [InlineData("plus", "distribution block", "Positive distribution block")]
    [InlineData("negative-block", "bus bar", "Negative block")]
    [InlineData("led_lamp", "lamp", "LED lamp")]
    [InlineData("sled", "lamp", "Sled")]
    [InlineData("-", "lamp", "-")]
    public void A_name_is_made_from_the_id(string id, string kind, string name) => Assert.Equal(name, DisplayNames.Of(id, kind));

    [Fact]
    public void A_written_name_of_gear_and_zone_is_taken()
    {
        var spec = SpecReader.Read(
            new SourceFile("a.wsk.yaml", """
                wiresketch: 1
                job: { title: A job }
                zones:
                  bed: { name: Load bed }
                  cab: {}
                gear:
                  amp: { is: lamp, name: Work lamp at the rack, zone: bed, power: 5 W }
                  gps-mast: { is: lamp, zone: cab, power: 5 W }
                """),
            FilesInMemory.None).Value;
        Assert.Equal([("Work lamp at the rack", "Load bed"), ("GPS mast", "cab")], spec.Gear.Select(g => (g.DisplayName, g.ZoneName!)));
        Assert.Equal(["Work lamp at the rack (amp)", "GPS mast"], spec.Gear.Select(DisplayNames.WithId));
        Assert.Equal(["Load bed", "cab"], spec.Zones.Select(z => z.DisplayName));
    }
}
