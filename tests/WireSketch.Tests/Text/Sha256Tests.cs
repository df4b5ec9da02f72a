using WireSketch.Text;

namespace WireSketch.Tests.Text;

public sealed class Sha256Tests
{
    /// <summary>The message digests that NIST gives as examples of FIPS 180-4: one block, two blocks; and of the empty message.</summary>
    [Theory]
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData(
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1")]
    public void Published_messages_have_their_published_digests(string message, string digest) =>
        Assert.Equal(digest, Convert.ToHexStringLower(Sha256.Hash(System.Text.Encoding.ASCII.GetBytes(message))));

    /// <summary>Beside the runtime's own, at every length around the edges of a block.</summary>
    [Fact]
    public void It_agrees_with_the_runtime_at_every_length()
    {
        for (var length = 0; length <= 300; length++)
        {
            var data = Enumerable.Range(0, length).Select(i => (byte)(i * 37)).ToArray();
            Assert.Equal(System.Security.Cryptography.SHA256.HashData(data), Sha256.Hash(data));
        }
    }
}
