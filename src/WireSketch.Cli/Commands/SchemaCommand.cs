using System.CommandLine;
using WireSketch.Cli.Outputs;
using WireSketch.Documents;
using WireSketch.Language;

namespace WireSketch.Cli.Commands;

/// <summary><c>schema</c>: the language as a JSON Schema, so that editors complete and check while one writes.</summary>
internal static class SchemaCommand
{
    public static Command Make(CliContext surroundings)
    {
        var output = new Option<string?>("--output", "-o")
        {
            Description = "The file to write; standard output otherwise.",
            HelpName = "FILE"
        };
        var command = new Command("schema", "Writes the JSON Schema of the spec language, for editors.") { output };
        command.SetAction((parse, stop) =>
        {
            var schema = SpecSchema.Write();
            if (parse.GetValue(output) is { Length: > 0 } file and not "-")
            {
                OutputFolder.WriteOne(surroundings, file, Paper.OfText(Path.GetFileName(file), schema), stop);
            }
            else
            {
                surroundings.Out.Write(schema);
            }

            return Task.FromResult(ExitCode.Clean);
        });
        return command;
    }
}
