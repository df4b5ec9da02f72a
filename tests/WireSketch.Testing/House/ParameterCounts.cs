using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;

namespace WireSketch.Testing.House;

/// <summary>How many arguments a call must give by their place.</summary>
/// <param name="Namespace">The namespace of the type.</param>
/// <param name="Member">Type and method.</param>
/// <param name="Count">Parameters that have no default and are not a list of any length.</param>
public readonly record struct ParameterCount(string Namespace, string Member, int Count)
{
    /// <summary>Those of every method and constructor of an assembly that was written by hand.</summary>
    public static IReadOnlyList<ParameterCount> In(string assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly));
        var metadata = file.GetMetadataReader();
        var counts = new List<ParameterCount>();
        foreach (var handle in metadata.TypeDefinitions)
        {
            var type = metadata.GetTypeDefinition(handle);
            var name = metadata.GetString(type.Name);
            var outermost = NameCollector.OutermostOf(metadata, handle);
            foreach (var method in type.GetMethods().Select(metadata.GetMethodDefinition))
            {
                var called = metadata.GetString(method.Name);
                if (!IsMade(metadata, method.GetCustomAttributes()) && !name.Contains('<') && !called.Contains('<'))
                {
                    var parameters = method.GetParameters().Select(metadata.GetParameter);
                    var needed = parameters.Count(p => p.SequenceNumber > 0 && IsNeeded(metadata, p));
                    counts.Add(new(outermost[..outermost.LastIndexOf('.')], $"{name}.{called}", needed));
                }
            }
        }

        return counts;
    }

    private static bool IsNeeded(MetadataReader metadata, Parameter parameter) =>
        (parameter.Attributes & ParameterAttributes.Optional) == 0
            && !Names(metadata, parameter.GetCustomAttributes()).Any(n => n is "ParamArrayAttribute" or "ParamCollectionAttribute");

    private static bool IsMade(MetadataReader metadata, CustomAttributeHandleCollection attributes) =>
        Names(metadata, attributes).Contains("CompilerGeneratedAttribute");

    private static IEnumerable<string> Names(MetadataReader metadata, CustomAttributeHandleCollection attributes) =>
        from handle in attributes
        let constructor = metadata.GetCustomAttribute(handle).Constructor
        where constructor.Kind == HandleKind.MemberReference
        let parent = metadata.GetMemberReference((MemberReferenceHandle)constructor).Parent
        where parent.Kind == HandleKind.TypeReference
        select metadata.GetString(metadata.GetTypeReference((TypeReferenceHandle)parent).Name);
}
