using System.Reflection;
using WireSketch.Testing;
using WireSketch.Testing.House;

namespace WireSketch.Tests.House;

/// <summary>What the two libraries show to a front end is meant to be shown: a change of it is a change of a committed file.</summary>
public sealed class PublicSurfaceTests
{
    [Theory, InlineData("WireSketch"), InlineData("WireSketch.Drawing")]
    public void The_public_surface_is_what_was_agreed(string library) =>
        Baseline.Match($"src/{library}/PublicSurface.txt", PublicSurface.Of(Assembly.LoadFrom(Assemblies.PathOf(library))));
}
