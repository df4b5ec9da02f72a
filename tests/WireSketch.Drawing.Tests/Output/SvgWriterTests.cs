using System.Text;
using System.Xml.Linq;
using WireSketch.Drawing.Output;
using Xunit;

namespace WireSketch.Drawing.Tests.Output;

public sealed class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void It_reads_back_as_XML_with_title_description_and_role()
    {
        var root = XDocument.Load(new MemoryStream(SvgWriter.Write(SampleScene.Of()))).Root!;
        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.Equal("A sample <sheet>", root.Element(Svg + "title")!.Value);
        Assert.Equal("Two boxes & a wire", root.Element(Svg + "desc")!.Value);
        Assert.Equal("0 0 792 612", root.Attribute("viewBox")!.Value);
        Assert.Contains(root.Descendants(Svg + "text"), t => t.Value == "P1 · 4 AWG · RD · 17 ft 38 A");
    }

    [Fact]
    public void What_users_write_cannot_become_markup_and_no_character_breaks_the_file()
    {
        var root = XDocument.Load(new MemoryStream(SvgWriter.Write(SampleScene.Of(words: "<script>\"&'\u0001\uFFFE 🚗")))).Root!;
        Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName == "script");
        Assert.Contains(root.Descendants(Svg + "text"), t => t.Value.StartsWith("<script>\"&'□□", StringComparison.Ordinal));
    }

    [Fact]
    public void Paths_keep_to_moves_lines_and_small_arcs()
    {
        var root = XDocument.Load(new MemoryStream(SvgWriter.Write(SampleScene.Of()))).Root!;
        Assert.Equal(
            "M240 100H294A6 6 0 0 1 300 106V194A6 6 0 0 0 306 200H400",
            root.Descendants(Svg + "path").First().Attribute("d")!.Value);
    }

    [Fact]
    public void It_carries_a_small_subset_of_both_weights()
    {
        var bytes = SvgWriter.Write(SampleScene.Of());
        var text = Encoding.UTF8.GetString(bytes);
        Assert.Equal(2, text.Split("@font-face").Length - 1);
        Assert.InRange(bytes.Length, 5_000, 40_000);
    }

    [Fact]
    public void The_same_scene_gives_the_same_bytes() => Assert.Equal(SvgWriter.Write(SampleScene.Of()), SvgWriter.Write(SampleScene.Of()));
}
