using System.Collections.Immutable;
using System.Reflection.PortableExecutable;

namespace WireSketch.Testing.House;

/// <summary>One type of ours uses another: in its bases, fields, signatures, attributes, locals or method bodies.</summary>
/// <param name="From">Full name of the type that uses; of a nested type the name of the outermost one around it.</param>
/// <param name="To">Full name of the type used; likewise the outermost.</param>
public readonly record struct TypeArrow(string From, string To);

/// <summary>A type that is not nested in another and was written by hand.</summary>
/// <param name="Namespace">Its namespace.</param>
/// <param name="Name">Its name, without the number of its type parameters.</param>
/// <param name="Assembly">The assembly that holds it.</param>
public readonly record struct OuterType(string Namespace, string Name, string Assembly)
{
    public string FullName => $"{Namespace}.{Name}";
}

/// <summary>
/// Which type uses which, read from compiled assemblies, so that no way of writing a name hides a use. Values of constants are copied by
/// the compiler and leave no trace of where they came from.
/// </summary>
public sealed class TypeArrows
{
    private readonly HashSet<TypeArrow> arrows = [];
    private readonly List<OuterType> types = [];

    private TypeArrows(IEnumerable<string> assemblies)
    {
        foreach (var path in assemblies)
        {
            using var file = new PEReader(File.OpenRead(path));
            new AssemblyReader(file, Path.GetFileNameWithoutExtension(path), types, arrows).Read();
        }

        var ours = types.Select(t => t.FullName).ToHashSet(StringComparer.Ordinal);
        arrows.RemoveWhere(a => a.From == a.To || !ours.Contains(a.From) || !ours.Contains(a.To));
        types.Sort((a, b) => string.CompareOrdinal(a.FullName, b.FullName));
    }

    /// <summary>The types of the assemblies, sorted by name; what the compiler made is left out.</summary>
    public ImmutableArray<OuterType> Types => [.. types];

    /// <summary>Every use of one of these types by another, sorted.</summary>
    public ImmutableArray<TypeArrow> All =>
        [.. arrows.OrderBy(a => a.From, StringComparer.Ordinal).ThenBy(a => a.To, StringComparer.Ordinal)];

    /// <summary>Reads assemblies as one: a use of a type of another of them counts too.</summary>
    /// <param name="assemblies">Paths of the assemblies.</param>
    public static TypeArrows Of(params IEnumerable<string> assemblies) => new(assemblies);
}
