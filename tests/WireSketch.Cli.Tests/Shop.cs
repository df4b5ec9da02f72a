using System.Text;
using WireSketch.Testing;

namespace WireSketch.Cli.Tests;

/// <summary>A folder of its own in which a command is run, as if someone typed it there.</summary>
internal sealed class Shop : IDisposable
{
    private readonly Dictionary<string, string> variables = new(StringComparer.Ordinal);

    public Shop() => Directory.CreateDirectory(Folder);

    public string Folder { get; } = Path.Combine(Path.GetTempPath(), "wiresketch-" + Guid.NewGuid().ToString("N"));

    public bool IsTerminal { get; init; }

    public static string OneAmplifier => Repository.Read("specs/one-amplifier.wsk.yaml");

    /// <summary>A clean spec with a piece of advice: its title block has no number.</summary>
    public static string WithAdvice => OneAmplifier.Replace("  reference: TM-0412\n", "", StringComparison.Ordinal);

    /// <summary>A spec with one error of a rule, which still resolves.</summary>
    public static string NoFuse => Repository.Read("specs/wrong/no-fuse.wsk.yaml");

    /// <summary>A spec that cannot be understood.</summary>
    public static string UnknownGear => Repository.Read("specs/wrong/unknown-gear.wsk.yaml");

    public Shop With(string name, string text)
    {
        var path = At(name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
        return this;
    }

    public Shop WithVariable(string name, string value)
    {
        variables[name] = value;
        return this;
    }

    public string At(string name) => Path.Combine(Folder, name);

    public string Read(string name) => File.ReadAllText(At(name));

    public async Task<Said> Type(params string[] words) => await TypeWith("", words);

    public async Task<Said> TypeWith(string input, params string[] words)
    {
        using var stream = new MemoryStream(Encoding.UTF8.GetBytes(input));
        using var output = new StringWriter();
        using var error = new StringWriter();
        var context = new CliContext
        {
            Out = output,
            Error = error,
            In = stream,
            OutIsTerminal = IsTerminal,
            ErrorIsTerminal = IsTerminal,
            Variable = variables.GetValueOrDefault,
            Folder = Folder,
        };
        var code = await CommandLine.RunAsync(words, context);
        var said = new Said(code, output.ToString(), error.ToString());
        Assert.DoesNotContain("   at ", said.Output + said.Error, StringComparison.Ordinal);
        return said;
    }

    public void Dispose()
    {
        foreach (var folder in Directory.EnumerateDirectories(Folder, "*", SearchOption.AllDirectories))
        {
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            }
        }

        Directory.Delete(Folder, recursive: true);
    }
}

/// <summary>What a command said.</summary>
internal sealed record Said(int Code, string Output, string Error);
