using WireSketch.Language;
using WireSketch.Testing;

namespace WireSketch.Tests.Language;

public sealed class ReferenceTests
{
    [Fact]
    public void The_page_of_keys_is_as_committed() => Baseline.Match("specs/reference/keys.md", KeyReference.Write());

    [Fact]
    public void The_schema_is_as_committed() => Baseline.Match("specs/reference/wiresketch.schema.json", SpecSchema.Write());
}
