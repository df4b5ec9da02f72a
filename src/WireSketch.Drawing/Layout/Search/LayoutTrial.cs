using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>An arrangement to be judged.</summary>
/// <param name="Choices">Its choices.</param>
/// <param name="Order">Its order, not yet sifted.</param>
/// <param name="Changed">Columns in which the order differs from what was sifted before.</param>
internal sealed record LayoutTrial(Choices Choices, ColumnOrder Order, bool[] Changed);
