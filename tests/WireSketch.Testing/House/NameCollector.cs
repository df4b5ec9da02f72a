using System.Collections.Immutable;
using System.Reflection.Metadata;

namespace WireSketch.Testing.House;

/// <summary>Walks through signatures and hands on the name of every type in them.</summary>
internal sealed class NameCollector(Action<string> found) : ISignatureTypeProvider<bool, object?>
{
    /// <summary>Hands on the outermost type around a definition or a reference.</summary>
    public void Add(MetadataReader metadata, EntityHandle type) => found(OutermostOf(metadata, type));

    /// <summary>Full name of the outermost type around a type.</summary>
    public static string OutermostOf(MetadataReader metadata, EntityHandle type)
    {
        if (type.Kind == HandleKind.TypeDefinition)
        {
            var definition = metadata.GetTypeDefinition((TypeDefinitionHandle)type);
            return definition.GetDeclaringType() is { IsNil: false } around
                ? OutermostOf(metadata, around)
                : Full(metadata, definition.Namespace, definition.Name);
        }

        var reference = metadata.GetTypeReference((TypeReferenceHandle)type);
        return reference.ResolutionScope.Kind == HandleKind.TypeReference
            ? OutermostOf(metadata, reference.ResolutionScope)
            : Full(metadata, reference.Namespace, reference.Name);
    }

    /// <summary>A type's name without the number of its type parameters.</summary>
    public static string Plain(string name) => name.Split('`')[0];

    public bool GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind)
    {
        Add(reader, handle);
        return true;
    }

    public bool GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind)
    {
        Add(reader, handle);
        return true;
    }

    public bool GetTypeFromSpecification(MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) =>
        reader.GetTypeSpecification(handle).DecodeSignature(this, genericContext);

    public bool GetArrayType(bool elementType, ArrayShape shape) => true;

    public bool GetByReferenceType(bool elementType) => true;

    public bool GetFunctionPointerType(MethodSignature<bool> signature) => true;

    public bool GetGenericInstantiation(bool genericType, ImmutableArray<bool> typeArguments) => true;

    public bool GetGenericMethodParameter(object? genericContext, int index) => true;

    public bool GetGenericTypeParameter(object? genericContext, int index) => true;

    public bool GetModifiedType(bool modifier, bool unmodifiedType, bool isRequired) => true;

    public bool GetPinnedType(bool elementType) => true;

    public bool GetPointerType(bool elementType) => true;

    public bool GetPrimitiveType(PrimitiveTypeCode typeCode) => true;

    public bool GetSZArrayType(bool elementType) => true;

    private static string Full(MetadataReader metadata, StringHandle space, StringHandle name) =>
        $"{metadata.GetString(space)}.{Plain(metadata.GetString(name))}";
}
