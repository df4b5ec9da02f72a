namespace WireSketch.Cli;

/// <summary>Whether and how words are colored. The words themselves always say the same without.</summary>
internal sealed record TerminalColor(bool On)
{
    /// <summary>
    /// The option beats <c>NO_COLOR</c> (set and not empty), which beats <c>CLICOLOR_FORCE</c> (not 0); else only a terminal that can is
    /// colored.
    /// </summary>
    public static TerminalColor For(string option, bool isTerminal, Func<string, string?> variable) => new(option switch
    {
        "always" => true,
        "never" => false,
        _ when !string.IsNullOrEmpty(variable("NO_COLOR")) => false,
        _ when variable("CLICOLOR_FORCE") is { Length: > 0 } force && force != "0" => true,
        _ => isTerminal && variable("TERM") is not "dumb",
    });

    public string Bold(string words) => Wrap("1", words);

    public string Error(string words) => Wrap("1;31", words);

    public string Warning(string words) => Wrap("1;33", words);

    public string Advice(string words) => Wrap("1;36", words);

    public string Gutter(string words) => Wrap("34", words);

    public string Good(string words) => Wrap("32", words);

    private string Wrap(string code, string words) => On && words.Length > 0 ? $"\u001b[{code}m{words}\u001b[0m" : words;
}
