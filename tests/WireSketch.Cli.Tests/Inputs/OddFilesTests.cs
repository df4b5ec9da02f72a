using System.Text;
using WireSketch.Cli.Inputs;

namespace WireSketch.Cli.Tests.Inputs;

public sealed class OddFilesTests
{
    public static TheoryData<string, byte[]> Odd => new()
    {
        { "empty", [] },
        { "only a mark", [0xEF, 0xBB, 0xBF] },
        { "zeros", new byte[5000] },
        { "every byte", [.. Enumerable.Range(0, 256).Select(i => (byte)i)] },
        { "broken UTF-8", Encoding.Latin1.GetBytes("wiresketch: 1\njob: { title: caf\u00e9 }\n") },
        { "a picture", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 0x0D, 0x49, 0x48, 0x44, 0x52] },
        { "half of UTF-16", [0xFF, 0xFE, 0x77] },
        { "brackets", Encoding.UTF8.GetBytes(new string('[', 3000)) },
        { "one long line", Encoding.UTF8.GetBytes("wiresketch: 1\nx: " + new string('y', 200_000)) },
        { "a list", "- a\n- b\n"u8.ToArray() },
        {
            "aliases of aliases",
            [
                .. "wiresketch: 1\na: &a [x, x, x, x]\nb: &b [*a, *a, *a, *a]\nc: &c [*b, *b, *b, *b]\n"u8,
                .. "d: &d [*c, *c, *c, *c]\ne: &e [*d, *d, *d, *d]\nf: [*e, *e, *e, *e]\n"u8,
            ]
        },
        { "escapes", "wiresketch: 1\njob: { title: \"\\e[31m\\a\" }\nzzz\u001b[2J: 1\n"u8.ToArray() },
    };

    [Theory]
    [MemberData(nameof(Odd))]
    public async Task Whatever_the_file_holds_the_command_ends_in_order(string what, byte[] bytes)
    {
        using var shop = new Shop();
        File.WriteAllBytes(shop.At("a.wsk.yaml"), bytes);
        foreach (var command in new[] { "check", "build" })
        {
            var said = await shop.Type(command, "a.wsk.yaml");
            Assert.True(said.Code == 1, $"{what}: {command} ended with {said.Code}: {said.Error}");
            Assert.DoesNotContain("fault of the program", said.Error, StringComparison.Ordinal);
            Assert.DoesNotContain('\u001b', said.Error);
        }
    }

    [Theory]
    [InlineData("latin1", "the file is not UTF-8: the byte FC")]
    [InlineData("utf-16", "the file is UTF-16")]
    public async Task A_spec_in_another_encoding_is_one_finding_that_says_so(string encoding, string words)
    {
        using var shop = new Shop();
        var text = Shop.OneAmplifier.Replace("shop: Quillmarsh", "shop: M\u00fcller", StringComparison.Ordinal);
        File.WriteAllBytes(
            shop.At("a.wsk.yaml"),
            encoding == "latin1"
                ? Encoding.Latin1.GetBytes(text)
                : new UnicodeEncoding(bigEndian: false, byteOrderMark: false).GetBytes(text));
        var said = await shop.Type("check", "a.wsk.yaml", "--format", "short");
        Assert.Contains(words, Assert.Single(said.Output.TrimEnd('\n').Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_beyond_all_measure_is_refused_before_it_is_read()
    {
        using var shop = new Shop();
        using (var file = File.Create(shop.At("a.wsk.yaml")))
        {
            file.SetLength(200L * 1024 * 1024);
        }

        var said = await shop.Type("check", "a.wsk.yaml");
        Assert.Equal(2, said.Code);
        Assert.Contains("it is larger than 64 MB", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_no_UTF8_keep_their_place()
    {
        Assert.Equal("a\uDCE9b", TextFile.Decode([0x61, 0xE9, 0x62]));
        Assert.Equal("Ω", TextFile.Decode([0xEF, 0xBB, 0xBF, 0xCE, 0xA9]));
        Assert.Equal("Ω", TextFile.Decode([0xFF, 0xFE, 0xA9, 0x03]));
        Assert.Equal("Ω", TextFile.Decode([0xFE, 0xFF, 0x03, 0xA9]));
    }
}
