using YamlDotNet.Core;
using YamlDotNet.Core.Tokens;

namespace WireSketch.Syntax;

/// <summary>
/// Gives the same token until it is consumed. The parser looks ahead twice behind a value with an anchor in a flow map, and a bare
/// scanner would lose the comma between the two looks.
/// </summary>
internal sealed class SteadyScanner(IScanner inner) : IScanner
{
    private bool isHeld;

    public Mark CurrentPosition => inner.CurrentPosition;

    public Token? Current => inner.Current;

    public bool MoveNext()
    {
        if (Current is not null)
        {
            ConsumeCurrent();
        }

        return MoveNextWithoutConsuming();
    }

    // The parser asks behind the last token whether there is another.
    public bool MoveNextWithoutConsuming() => isHeld ? Current is not StreamEnd : isHeld = inner.MoveNextWithoutConsuming();

    public void ConsumeCurrent()
    {
        isHeld = false;
        inner.ConsumeCurrent();
    }
}
