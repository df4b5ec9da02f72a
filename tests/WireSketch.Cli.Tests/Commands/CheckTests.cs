using System.Text.Json;

namespace WireSketch.Cli.Tests.Commands;

public sealed class CheckTests
{
    [Fact]
    public async Task A_clean_spec_ends_with_0_and_writes_nothing()
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.OneAmplifier);
        var said = await shop.Type("check", "a.wsk.yaml");
        Assert.Equal(0, said.Code);
        Assert.Empty(said.Output);
        Assert.Single(Directory.GetFileSystemEntries(shop.Folder));
    }

    [Fact]
    public async Task An_error_ends_with_1_and_is_shown_with_its_line_and_marks()
    {
        using var shop = new Shop().With("jobs/b.wsk.yaml", Shop.NoFuse);
        var said = await shop.Type("check", "jobs/b.wsk.yaml");
        Assert.Equal(1, said.Code);
        Assert.Empty(said.Output);
        Assert.Contains("error[supply/unfused]: ", said.Error, StringComparison.Ordinal);
        Assert.Contains("--> jobs/b.wsk.yaml:39:3\n", said.Error, StringComparison.Ordinal);
        Assert.Contains("39 |   P1: {", said.Error, StringComparison.Ordinal);
        Assert.Contains("\n   |   ^^\n", said.Error, StringComparison.Ordinal);
        Assert.Contains("jobs/b.wsk.yaml: 1 error", said.Error, StringComparison.Ordinal);
        Assert.Contains("wiresketch explain supply/unfused", said.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("severity: error, ", 0)]
    [InlineData("severity: warning, ", 1)]
    [InlineData("", 1)]
    public async Task An_accepted_error_does_not_count_in_the_exit_code_and_a_graver_one_does(string severity, int code)
    {
        var accepted = $"accept:\n  - {{ rule: load/coil-open, at: sub, {severity}because: bench test }}\n" + OpenCoil;
        using var shop = new Shop().With("a.wsk.yaml", "wiresketch: 1\njob: { title: Demo, customer: Demo }\n" + accepted)
            .With("b.wsk.yaml", "wiresketch: 1\njob: { customer: Demo }\n" + OpenCoil);
        Assert.Equal(code, (await shop.Type("check", "a.wsk.yaml")).Code);
        Assert.Equal(1, (await shop.Type("check", "b.wsk.yaml")).Code);
    }

    private const string OpenCoil = """
        gear:
          amp:
            is: amplifier
            origin: existing
            channels: { sub: { power: { 4 ohm: 250 W }, minimum: 2 ohm } }
            settings: { low-pass: 80 Hz }
          sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 250 W }
        runs:
          S1: { from: amp.sub, to: sub.coil.1, wire: 12 AWG, length: 9 ft }
        """;

    [Fact]
    public async Task Quiet_leaves_the_summary_out()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.NoFuse);
        var said = await shop.Type("check", "-q", "b.wsk.yaml");
        Assert.DoesNotContain("1 error", said.Error, StringComparison.Ordinal);
        Assert.Contains("error[supply/unfused]", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Verbose_says_how_long_a_step_took()
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.OneAmplifier);
        Assert.Matches(@"a\.wsk\.yaml: read, computed and checked in \d+ ms", (await shop.Type("check", "-v", "a.wsk.yaml")).Error);
    }

    [Theory]
    [InlineData("error", 0)]
    [InlineData("advice", 1)]
    [InlineData("warning", 0)]
    [InlineData("never", 0)]
    public async Task The_least_finding_that_fails_can_be_chosen(string least, int code)
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.WithAdvice);
        Assert.Equal(code, (await shop.Type("check", "a.wsk.yaml", "--fail-on", least)).Code);
    }

    [Fact]
    public async Task The_short_format_has_a_line_for_each_finding_on_standard_output()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        var said = await shop.Type("check", "b.wsk.yaml", "--format", "short");
        Assert.Equal(1, said.Code);
        Assert.Equal("b.wsk.yaml:40:26: error[spec/reference]: there is no gear named \"seat-bol\"\n", said.Output);
        Assert.DoesNotContain("-->", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_json_format_can_be_read_and_has_a_version()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        using var json = JsonDocument.Parse((await shop.Type("check", "b.wsk.yaml", "-f", "json")).Output);
        Assert.Equal(1, json.RootElement.GetProperty("version").GetInt32());
        var finding = Assert.Single(json.RootElement.GetProperty("findings").EnumerateArray());
        Assert.Equal("spec/reference", finding.GetProperty("rule").GetString());
        Assert.Equal(40, finding.GetProperty("at").GetProperty("line").GetInt32());
        Assert.Equal("b.wsk.yaml", finding.GetProperty("at").GetProperty("file").GetString());
        Assert.Equal(1, json.RootElement.GetProperty("summary").GetProperty("errors").GetInt32());
    }

    [Fact]
    public async Task The_github_format_makes_annotations_and_lets_no_spec_make_its_own()
    {
        using var shop = new Shop().With(
            "b.wsk.yaml",
            "wiresketch: 1\njob: { title: x }\ngear:\n  \"a%0A::error::b\": { is: \"::warning::x\" }\n");
        var said = await shop.Type("check", "b.wsk.yaml", "--format", "github");
        Assert.All(
            said.Output.TrimEnd('\n').Split('\n'),
            l => Assert.StartsWith("::error file=b.wsk.yaml,line=", l, StringComparison.Ordinal));
        Assert.DoesNotContain("%0A::error", said.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_sarif_format_has_relative_addresses_and_known_rules()
    {
        using var shop = new Shop().With("my jobs/b.wsk.yaml", Shop.NoFuse);
        using var json = JsonDocument.Parse((await shop.Type("check", "my jobs", "--format", "sarif")).Output);
        var run = json.RootElement.GetProperty("runs")[0];
        var rules = run.GetProperty("tool")
            .GetProperty("driver")
            .GetProperty("rules")
            .EnumerateArray()
            .Select(r => r.GetProperty("id").GetString())
            .ToArray();
        var results = run.GetProperty("results").EnumerateArray().ToArray();
        Assert.Contains(
            results,
            r => r.GetProperty("ruleId").GetString() == "supply/unfused" && r.GetProperty("level").GetString() == "error");
        Assert.All(results, r =>
        {
            Assert.Equal(r.GetProperty("ruleId").GetString(), rules[r.GetProperty("ruleIndex").GetInt32()]);
            var place = r.GetProperty("locations")[0].GetProperty("physicalLocation");
            Assert.Equal("my%20jobs/b.wsk.yaml", place.GetProperty("artifactLocation").GetProperty("uri").GetString());
            Assert.InRange(place.GetProperty("region").GetProperty("startLine").GetInt32(), 1, 100);
        });
        Assert.DoesNotContain(shop.Folder, json.RootElement.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Standard_input_is_read_under_the_name_that_is_given()
    {
        using var shop = new Shop();
        var said = await shop.TypeWith(Shop.NoFuse, "check", "-", "--stdin-name", "jobs/c.wsk.yaml", "--format", "short");
        Assert.StartsWith("jobs/c.wsk.yaml:", said.Output, StringComparison.Ordinal);
        Assert.Equal(1, said.Code);
    }

    [Fact]
    public async Task A_spec_that_is_missing_keeps_nobody_from_judging_the_others()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        var said = await shop.Type("check", "nothing.wsk.yaml", "b.wsk.yaml", "-f", "json");
        Assert.Equal(2, said.Code);
        Assert.Contains("wiresketch: nothing.wsk.yaml: there is no such file or folder\n", said.Error, StringComparison.Ordinal);
        using var json = JsonDocument.Parse(said.Output);
        Assert.Equal("b.wsk.yaml", Assert.Single(json.RootElement.GetProperty("specs").EnumerateArray()).GetString());
        Assert.Single(json.RootElement.GetProperty("findings").EnumerateArray());
        Assert.Equal(
            "nothing.wsk.yaml: there is no such file or folder",
            Assert.Single(json.RootElement.GetProperty("unread").EnumerateArray()).GetString());
    }

    [Fact]
    public async Task Of_very_many_findings_the_worst_are_shown_and_the_others_counted()
    {
        var lines = string.Concat(Enumerable.Range(0, 250).Select(i => $"  L{i}: {{ is: lamp, power: 10 }}\n"));
        using var shop = new Shop().With("b.wsk.yaml", "wiresketch: 1\njob: { title: x }\ngear:\n" + lines);
        var said = await shop.Type("check", "b.wsk.yaml");
        Assert.Equal(200, said.Error.Split("error[spec/unit]").Length - 1);
        Assert.Contains(
            "b.wsk.yaml: 50 more findings are not shown; wiresketch check --format short lists all\n",
            said.Error,
            StringComparison.Ordinal);
        Assert.Contains("b.wsk.yaml: 250 errors", said.Error, StringComparison.Ordinal);
        Assert.Equal(250, (await shop.Type("check", "b.wsk.yaml", "-f", "short")).Output.Split('\n').Length - 1);
    }

    [Fact]
    public async Task Several_specs_are_counted_together()
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.NoFuse).With("b.wsk.yaml", Shop.UnknownGear);
        var said = await shop.Type("check", "a.wsk.yaml", "b.wsk.yaml");
        Assert.Equal(1, said.Code);
        Assert.Contains("2 specs: 2 errors", said.Error, StringComparison.Ordinal);
    }
}
