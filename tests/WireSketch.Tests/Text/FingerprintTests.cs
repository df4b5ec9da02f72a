using WireSketch.Text;

namespace WireSketch.Tests.Text;

public sealed class FingerprintTests
{
    // SHA-256 of "abc" begins ba7816bf 8f01cfea (FIPS 180-4, example); a file ends with a zero byte here, so the value is that of "abc\0".
    [Fact]
    public void It_is_the_beginning_of_the_SHA256_of_each_file_and_a_zero()
    {
        var expected = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData("abc\0"u8))[..12];
        Assert.Equal(expected, Fingerprint.Of(new("a", "abc"), []));
        Assert.Equal("ba78 16bf 8f01", Fingerprint.ForPeople("ba7816bf8f01"));
    }

    [Fact]
    public void Line_ends_and_names_make_no_difference_but_words_do()
    {
        var print = Fingerprint.Of(new("a", "x\ny\n"), [new("p", "z")]);
        Assert.Equal(print, Fingerprint.Of(new("b", "x\r\ny\r\n"), [new("q", "z")]));
        Assert.NotEqual(print, Fingerprint.Of(new("a", "x\ny\nz"), []));
        Assert.NotEqual(print, Fingerprint.Of(new("a", "x\ny\n"), [new("p", "zz")]));
    }
}
