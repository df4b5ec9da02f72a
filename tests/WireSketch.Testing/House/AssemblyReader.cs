using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace WireSketch.Testing.House;

/// <summary>Reads the types of one assembly and what each of them names.</summary>
internal sealed class AssemblyReader
{
    private readonly PEReader file;
    private readonly MetadataReader metadata;
    private readonly string assembly;
    private readonly List<OuterType> types;
    private readonly HashSet<TypeArrow> arrows;
    private readonly NameCollector names;
    private string current = "";

    public AssemblyReader(PEReader file, string assembly, List<OuterType> types, HashSet<TypeArrow> arrows)
    {
        this.file = file;
        this.assembly = assembly;
        this.types = types;
        this.arrows = arrows;
        metadata = file.GetMetadataReader();
        names = new(name => arrows.Add(new(current, name)));
    }

    public void Read()
    {
        foreach (var handle in metadata.TypeDefinitions)
        {
            var type = metadata.GetTypeDefinition(handle);
            current = NameCollector.OutermostOf(metadata, handle);
            if (type.GetDeclaringType().IsNil && !metadata.GetString(type.Name).StartsWith('<') && !type.Namespace.IsNil)
            {
                types.Add(new(metadata.GetString(type.Namespace), NameCollector.Plain(metadata.GetString(type.Name)), assembly));
            }

            Use(type.BaseType);
            Attributes(type.GetCustomAttributes());
            foreach (var face in type.GetInterfaceImplementations())
            {
                Use(metadata.GetInterfaceImplementation(face).Interface);
            }

            Parameters(type.GetGenericParameters());
            foreach (var field in type.GetFields().Select(metadata.GetFieldDefinition))
            {
                field.DecodeSignature(names, null);
                Attributes(field.GetCustomAttributes());
            }

            foreach (var property in type.GetProperties().Select(metadata.GetPropertyDefinition))
            {
                Attributes(property.GetCustomAttributes());
            }

            foreach (var method in type.GetMethods().Select(metadata.GetMethodDefinition))
            {
                Method(method);
            }
        }
    }

    private void Method(MethodDefinition method)
    {
        method.DecodeSignature(names, null);
        Attributes(method.GetCustomAttributes());
        Parameters(method.GetGenericParameters());
        if (method.RelativeVirtualAddress == 0)
        {
            return;
        }

        var body = file.GetMethodBody(method.RelativeVirtualAddress);
        if (!body.LocalSignature.IsNil)
        {
            metadata.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(names, null);
        }

        foreach (var region in body.ExceptionRegions)
        {
            Use(region.CatchType);
        }

        foreach (var token in InstructionTokens.Of(body.GetILReader()))
        {
            Use(MetadataTokens.EntityHandle(token));
        }
    }

    private void Parameters(GenericParameterHandleCollection parameters)
    {
        foreach (var constraint in parameters.SelectMany(p => metadata.GetGenericParameter(p).GetConstraints()))
        {
            Use(metadata.GetGenericParameterConstraint(constraint).Type);
        }
    }

    private void Attributes(CustomAttributeHandleCollection attributes)
    {
        foreach (var attribute in attributes)
        {
            Use(metadata.GetCustomAttribute(attribute).Constructor);
        }
    }

    private void Use(EntityHandle handle)
    {
        if (handle.IsNil)
        {
            return;
        }

        switch (handle.Kind)
        {
            case HandleKind.TypeDefinition:
            case HandleKind.TypeReference:
                names.Add(metadata, handle);
                break;
            case HandleKind.TypeSpecification:
                metadata.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(names, null);
                break;
            case HandleKind.MethodDefinition:
                var method = metadata.GetMethodDefinition((MethodDefinitionHandle)handle);
                Use(method.GetDeclaringType());
                method.DecodeSignature(names, null);
                break;
            case HandleKind.FieldDefinition:
                var field = metadata.GetFieldDefinition((FieldDefinitionHandle)handle);
                Use(field.GetDeclaringType());
                field.DecodeSignature(names, null);
                break;
            case HandleKind.MemberReference:
                Member(metadata.GetMemberReference((MemberReferenceHandle)handle));
                break;
            case HandleKind.MethodSpecification:
                var made = metadata.GetMethodSpecification((MethodSpecificationHandle)handle);
                Use(made.Method);
                made.DecodeSignature(names, null);
                break;
        }
    }

    private void Member(MemberReference member)
    {
        Use(member.Parent);
        if (member.GetKind() == MemberReferenceKind.Method)
        {
            member.DecodeMethodSignature(names, null);
        }
        else
        {
            member.DecodeFieldSignature(names, null);
        }
    }
}
