using WireSketch.Cli.Inputs;

namespace WireSketch.Cli.Tests.Inputs;

public sealed class SpecFinderTests
{
    private const string Shared = "wiresketch: 1\nparts:\n  p: { is: battery }\n";

    [Fact]
    public void A_folder_is_walked_in_ordinal_order_and_shared_files_are_passed_by()
    {
        using var shop = new Shop().With("jobs/b.wsk.yaml", Shop.OneAmplifier)
            .With("jobs/B.wsk.yaml", Shop.OneAmplifier)
            .With("jobs/a/z.wsk.yaml", Shop.OneAmplifier)
            .With("jobs/parts.wsk.yaml", Shared).With("jobs/notes.txt", "no spec");
        Assert.Equal(["jobs/B.wsk.yaml", "jobs/a/z.wsk.yaml", "jobs/b.wsk.yaml"], Names(shop, "jobs"));
        Assert.Equal(["jobs/B.wsk.yaml", "jobs/b.wsk.yaml"], Names(shop, "jobs/*.wsk.yaml"));
        Assert.Equal(["jobs/a/z.wsk.yaml"], Names(shop, "jobs/a/?.wsk.yaml"));
    }

    [Fact]
    public void A_spec_that_is_named_twice_is_read_once()
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.OneAmplifier);
        Assert.Equal(["a.wsk.yaml"], Names(shop, "a.wsk.yaml", "./a.wsk.yaml", "*.wsk.yaml"));
    }

    [Fact]
    public void A_file_is_named_as_seen_from_its_own_folder()
    {
        using var shop = new Shop().With("jobs/a.wsk.yaml", Shop.OneAmplifier);
        var input = Assert.Single(Find(shop, "jobs/a.wsk.yaml"));
        Assert.Equal("a.wsk.yaml", input.File.Name);
        Assert.Equal("a", input.Stem);
        Assert.Equal("shop/parts.yaml", (input with { Shown = "jobs/x/a.wsk.yaml" }).NameOf(new("../../shop/parts.yaml", "")));
    }

    [Fact]
    public void A_file_that_the_system_will_not_let_be_read_is_trouble()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only there is a file that nobody may read from its beginning.");
        using var shop = new Shop();
        Assert.StartsWith(
            "/proc/self/mem: ",
            Assert.Throws<UserException>(() => Find(shop, "/proc/self/mem")).Message,
            StringComparison.Ordinal);
    }

    private static IReadOnlyList<SpecInput> Find(Shop shop, params string[] arguments)
    {
        var context = new CliContext
        {
            Out = TextWriter.Null,
            Error = TextWriter.Null,
            In = Stream.Null,
            OutIsTerminal = false,
            ErrorIsTerminal = false,
            Variable = _ => null,
            Folder = shop.Folder,
        };
        return new SpecFinder(context, null).Find(arguments).Specs;
    }

    private static IEnumerable<string> Names(Shop shop, params string[] arguments) => Find(shop, arguments).Select(i => i.Shown);
}
