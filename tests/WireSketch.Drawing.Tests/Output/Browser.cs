using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Xunit;

namespace WireSketch.Drawing.Tests.Output;

/// <summary>A Chromium without window, if the machine has one.</summary>
internal static partial class Browser
{
    /// <summary>A picture of an SVG of so many CSS pixels, at twice the resolution.</summary>
    public static byte[] Screenshot(byte[] svg, int width, int height)
    {
        var folder = Directory.CreateTempSubdirectory("drawing");
        var picture = Path.Combine(folder.FullName, "page.png");
        Run(
            folder, svg, "", $"--screenshot={picture}", $"--window-size={width},{height}", "--force-device-scale-factor=2",
            "--hide-scrollbars");
        var bytes = File.ReadAllBytes(picture);
        folder.Delete(true);
        return bytes;
    }

    /// <summary>Left edge and length of every text, in the SVG's own units, as the browser sets it.</summary>
    public static (double Left, double Length)[] Texts(byte[] svg)
    {
        var folder = Directory.CreateTempSubdirectory("drawing");
        var script =
            "<script>document.fonts.ready.then(()=>{document.title=[...document.querySelectorAll('text')]"
                + ".map(t=>t.getStartPositionOfChar(0).x+'|'+t.getStartPositionOfChar(0).y"
                + "+'|'+t.getComputedTextLength()).join(';')})</script>";
        var page = Run(folder, svg, script, "--dump-dom", "--virtual-time-budget=3000");
        folder.Delete(true);
        return [.. Title().Match(page).Groups[1].Value.Split(';').Select(t => t.Split('|')).Select(t => (Number(t[0]), Number(t[2])))];
    }

    public static void Need()
    {
        if (Find() is null)
        {
            Assert.Skip("no chromium on the PATH to compare with");
        }
    }

    private static string Run(DirectoryInfo folder, byte[] svg, string script, params string[] options)
    {
        var page = Path.Combine(folder.FullName, "page.html");
        var drawing = Encoding.UTF8.GetString(svg);
        drawing = drawing[drawing.IndexOf("<svg", StringComparison.Ordinal)..];
        File.WriteAllText(
            page,
            $"<!doctype html><meta charset=utf-8><style>body{{margin:0}}body>svg{{display:block}}</style><body>{drawing}{script}");
        var start = new ProcessStartInfo(Find()!) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var option in (string[])[
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            $"--user-data-dir={folder.FullName}/profile",
            .. options,
            new Uri(page).AbsoluteUri
        ])
        {
            start.ArgumentList.Add(option);
        }

        using var process = Process.Start(start)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output;
    }

    private static string? Find() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(p => (string[])[Path.Combine(p, "chromium"), Path.Combine(p, "chromium-browser")]).FirstOrDefault(File.Exists);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("<title>([^<]*)</title></head>")]
    private static partial Regex Title();
}
