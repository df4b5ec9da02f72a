using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using WireSketch.Testing;

namespace WireSketch.Cli.Tests;

/// <summary>The real program, in processes of their own, under different circumstances.</summary>
public sealed class SameBytesTests
{
    [Theory]
    [InlineData("one-amplifier")]
    [InlineData("two-amplifiers")]
    public void Folder_language_and_time_zone_change_no_byte(string spec)
    {
        using var here = new Shop();
        using var there = new Shop();
        foreach (var shop in new[] { here, there })
        {
            shop.With($"{spec}.wsk.yaml", Repository.Read($"specs/{spec}.wsk.yaml"))
                .With("parts/shop-parts.yaml", Repository.Read("specs/parts/shop-parts.yaml"));
        }

        var first = Run(here.Folder, ["build", $"{spec}.wsk.yaml"], ("LANG", "C"), ("LC_ALL", "C"), ("TZ", "UTC"));
        var second = Run(
            Path.GetTempPath(),
            ["build", there.At($"{spec}.wsk.yaml"), "--output", there.At(spec)],
            ("LANG", "tr_TR.UTF-8"),
            ("LC_ALL", "tr_TR.UTF-8"),
            ("TZ", "Pacific/Chatham"));
        Assert.Equal((0, 0), (first.Code, second.Code));
        var files = Hashes(here.At(spec));
        Assert.True(files.Count >= 13, string.Join(", ", files.Keys));
        Assert.Equal(files, Hashes(there.At(spec)));
    }

    /// <summary>
    /// The program is built without the tables of languages, so that LANG alone could hardly change anything: here every sign that a
    /// language may have of its own is another one, in the thread that builds and in all that it starts.
    /// </summary>
    [Theory]
    [InlineData("two-amplifiers")]
    [InlineData("camper")]
    public async Task Signs_and_words_of_another_language_change_no_byte(string spec)
    {
        using var plain = new Shop();
        using var odd = new Shop();
        foreach (var shop in new[] { plain, odd })
        {
            shop.With($"{spec}.wsk.yaml", Repository.Read($"specs/{spec}.wsk.yaml"))
                .With("parts/shop-parts.yaml", Repository.Read("specs/parts/shop-parts.yaml"));
        }

        var before = await Everything(plain);
        var (culture, words) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = Odd();
            Assert.Equal("~1'234;5", (-1234.5).ToString("N1", null));
            Assert.Equal(before, await Everything(odd));
        }
        finally
        {
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (culture, words);
        }

        async Task<SortedDictionary<string, string>> Everything(Shop shop)
        {
            Assert.Equal(0, (await shop.Type("build", $"{spec}.wsk.yaml")).Code);
            var files = Hashes(shop.At(spec));
            foreach (var format in new[] { "short", "json", "github", "sarif" })
            {
                files.Add("--format " + format, (await shop.Type("check", $"{spec}.wsk.yaml", "--format", format)).Output);
            }

            files.Add("hookups", (await shop.Type("hookups", "2 x 4 ohm", "--power", "4 ohm: 250.5 W")).Output);
            return files;
        }
    }

    private static CultureInfo Odd()
    {
        var odd = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        odd.NumberFormat = new()
        {
            NumberDecimalSeparator = ";",
            NumberGroupSeparator = "'",
            NegativeSign = "~",
            PositiveSign = "#",
            PercentDecimalSeparator = ";",
            PercentSymbol = "pc",
            CurrencyDecimalSeparator = ";",
            CurrencySymbol = "?",
            NaNSymbol = "none",
            PositiveInfinitySymbol = "much",
            NegativeInfinitySymbol = "little",
        };
        odd.DateTimeFormat = new()
        {
            DateSeparator = "_",
            TimeSeparator = "_",
            ShortDatePattern = "dd_MM_yy",
            LongTimePattern = "ss_mm_HH"
        };
        return odd;
    }

    [Fact]
    public void The_process_ends_with_the_code_and_writes_where_it_should()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        var said = Run(shop.Folder, ["check", "b.wsk.yaml", "--format", "short"]);
        Assert.Equal(1, said.Code);
        Assert.StartsWith("b.wsk.yaml:40:26: error[spec/reference]", said.Output, StringComparison.Ordinal);
        Assert.Contains("b.wsk.yaml: 1 error", said.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', said.Error);
    }

    [Fact]
    public void A_folder_that_may_not_be_written_ends_with_2()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        var said = Run(shop.Folder, ["build", "b.wsk.yaml", "--output", "/proc/wiresketch"]);
        Assert.Equal(2, said.Code);
        Assert.StartsWith(
            "wiresketch: /proc/wiresketch cannot be written: ",
            said.Error.Split('\n').First(l => l.StartsWith("wiresketch:", StringComparison.Ordinal)),
            StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said.Error, StringComparison.Ordinal);
    }

    private static SortedDictionary<string, string> Hashes(string folder) => new(
        Directory.GetFiles(folder)
            .ToDictionary(
                f => Path.GetFileName(f),
                f => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(f))),
                StringComparer.Ordinal),
        StringComparer.Ordinal);

    private static Said Run(string folder, string[] words, params (string Name, string Value)[] variables)
    {
        var start = new ProcessStartInfo(
            "dotnet",
            [typeof(CommandLine).Assembly.Location, .. words])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true
        };
        foreach (var (name, value) in variables)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, output, error.Result);
    }
}
