namespace WireSketch.Mutations;

/// <summary>One change of the code.</summary>
/// <param name="Number">Its number in the switch, from 1.</param>
/// <param name="Stage">The stage that it is in.</param>
/// <param name="File">From the root of the repository.</param>
/// <param name="Line">From 1.</param>
/// <param name="Start">Where the changed node begins in the file.</param>
/// <param name="Length">How long it is.</param>
/// <param name="Change">Which change of that node.</param>
/// <param name="Before">The code as it is, on one line.</param>
/// <param name="After">The code as it becomes.</param>
internal sealed record Mutant(
    int Number, string Stage, string File, int Line, int Start, int Length, string Change, string Before, string After)
{
    /// <summary>The same change in another state of the tree.</summary>
    public string Key => $"{File}|{Change}|{Before}|{After}";
}

/// <summary>How a mutant ended.</summary>
internal enum Outcome
{
    /// <summary>A test failed.</summary>
    Killed,

    /// <summary>The tests did not end in time.</summary>
    TimedOut,

    /// <summary>All tests that reach it passed.</summary>
    Survived,

    /// <summary>No test reaches it.</summary>
    NotReached,
}

/// <summary>A mutant with its end.</summary>
/// <param name="Mutant">The mutant.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="By">The test that failed first.</param>
/// <param name="Seconds">What it took.</param>
/// <param name="Reason">Why it may survive, written by a person; kept from run to run.</param>
internal sealed record Verdict(Mutant Mutant, Outcome Outcome, string? By, double Seconds, string? Reason);
