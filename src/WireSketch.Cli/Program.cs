using WireSketch.Cli;

return await CommandLine.RunAsync(args, CliContext.OfProcess());
