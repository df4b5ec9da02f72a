using WireSketch.Cli.Inputs;
using WireSketch.Text;

namespace WireSketch.Cli.Tests.Inputs;

public sealed class DiskFilesTests
{
    private static readonly SourceFile Spec = new("a.wsk.yaml", "wiresketch: 1");

    [Fact]
    public void A_file_beside_the_spec_is_read()
    {
        using var shop = new Shop().With("jobs/parts/p.yaml", "text");
        var file = new DiskFiles(shop.At("jobs"), []).Read(Spec, "parts/p.yaml", out var why);
        Assert.Equal(("parts/p.yaml", "text", ""), (file!.Name, file.Text, why));
    }

    [Fact]
    public void A_file_above_is_read_only_where_its_folder_was_named()
    {
        using var shop = new Shop().With("p.yaml", "text").With("jobs/a.wsk.yaml", "");
        Assert.Null(new DiskFiles(shop.At("jobs"), []).Read(Spec, "../p.yaml", out var why));
        Assert.Contains("--root", why, StringComparison.Ordinal);
        Assert.Equal("../p.yaml", new DiskFiles(shop.At("jobs"), [shop.Folder]).Read(Spec, "../p.yaml", out _)!.Name);
    }

    [Theory]
    [InlineData("https://parts.example/p.yaml", "network")]
    [InlineData("file:///etc/passwd", "network")]
    [InlineData("//server/p.yaml", "network")]
    [InlineData("/etc/passwd", "relative")]
    [InlineData("C:\\p.yaml", "relative")]
    [InlineData("", "relative")]
    [InlineData("p\0.yaml", "relative")]
    [InlineData("nothing.yaml", "no such file")]
    [InlineData("folder", "it is a folder")]
    [InlineData("folder/../../jobs-2/p.yaml", "outside")]
    public void What_a_spec_may_not_reach_is_refused_with_a_reason(string path, string reason)
    {
        using var shop = new Shop().With("jobs/folder/x", "").With("jobs-2/p.yaml", "text");
        Assert.Null(new DiskFiles(shop.At("jobs"), []).Read(Spec, path, out var why));
        Assert.Contains(reason, why, StringComparison.Ordinal);
    }

    /// <summary>It has no length, as an empty file has none, and opening it would wait for somebody to write.</summary>
    [Fact]
    public async Task A_pipe_is_not_opened()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "There pipes do not lie among files.");
        using var shop = new Shop().With("jobs/empty.yaml", "").With("jobs/a.wsk.yaml", Shop.UnknownGear);
        foreach (var name in new[] { "jobs/p.yaml", "jobs/b.wsk.yaml" })
        {
            using var made = System.Diagnostics.Process.Start("mkfifo", [shop.At(name)]);
            await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        }

        var files = new DiskFiles(shop.At("jobs"), []);
        Assert.Null(files.Read(Spec, "p.yaml", out var why));
        Assert.Contains("pipe", why, StringComparison.Ordinal);
        Assert.Null(files.Read(Spec, "empty.yaml", out _));

        var said = await shop.Type("check", "jobs", "--format", "short");
        Assert.Contains("jobs/b.wsk.yaml:1:1: error[spec/version]: there is nothing in the file", said.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_that_leads_outside_is_refused()
    {
        using var shop = new Shop().With("secret/p.yaml", "text").With("jobs/a.wsk.yaml", "");
        File.CreateSymbolicLink(shop.At("jobs/p.yaml"), shop.At("secret/p.yaml"));
        Directory.CreateSymbolicLink(shop.At("jobs/parts"), shop.At("secret"));
        var files = new DiskFiles(shop.At("jobs"), []);
        Assert.Null(files.Read(Spec, "p.yaml", out var why));
        Assert.Contains("link", why, StringComparison.Ordinal);
        Assert.Null(files.Read(Spec, "parts/p.yaml", out _));
    }
}
