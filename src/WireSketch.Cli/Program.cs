using WireSketch.Cli;

return await CommandLine.RunAsync(args, Surroundings.OfProcess());
