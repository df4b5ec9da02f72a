using System.CommandLine;
using System.Text;
using WireSketch.Cli.Outputs;
using WireSketch.Documents;

namespace WireSketch.Cli.Commands;

/// <summary><c>new</c>: a commented spec to begin with. It asks nothing and overwrites nothing.</summary>
internal static class NewCommand
{
    private const string Resource = "starter.wsk.yaml";

    public static Command Make(CliContext surroundings)
    {
        var file = new Argument<string>("file")
        {
            Description = "The file to write, or - for standard output.",
            DefaultValueFactory = _ => "install.wsk.yaml",
            Arity = ArgumentArity.ZeroOrOne
        };
        var command = new Command(
            "new",
            "Writes a commented spec of a small install that builds as it stands. Change it into yours.") { file };
        command.SetAction((parse, stop) =>
        {
            Run(surroundings, parse.GetValue(file)!, stop);
            return Task.FromResult(ExitCode.Clean);
        });
        return command;
    }

    private static void Run(CliContext surroundings, string file, CancellationToken stop)
    {
        var starter = Starter();
        if (file == "-")
        {
            surroundings.Out.Write(starter);
            return;
        }

        if (file.Length == 0)
        {
            throw new UserException("the new spec has no name");
        }

        var full = surroundings.Full(file);
        if (File.Exists(full) || Directory.Exists(full))
        {
            throw new UserException(
                $"{file} is there already; nothing was written. Give another name, such as wiresketch new another.wsk.yaml");
        }

        OutputFolder.WriteOne(surroundings, file, Paper.OfText(Path.GetFileName(file), starter), stop);
        surroundings.Error.WriteLine($"next: wiresketch build {file}");
    }

    internal static string Starter()
    {
        using var stream = typeof(NewCommand).Assembly.GetManifestResourceStream(Resource)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
