using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace WireSketch.Testing.House;

/// <summary>A type of ours uses another, as the compiled assembly has it.</summary>
/// <param name="From">The type that uses, outermost.</param>
/// <param name="To">The type that is used, outermost.</param>
public sealed record TypeUse(TypeName From, TypeName To);

/// <summary>A type by namespace and name.</summary>
public sealed record TypeName(string Namespace, string Name)
{
    public override string ToString() => $"{Namespace}.{Name}";
}

/// <summary>
/// Reads from compiled assemblies, without loading them, which type uses which: in fields, signatures, bases and the bodies of its methods.
/// What the compiler makes beside a type counts as the type's own.
/// </summary>
public sealed class AssemblyArrows
{
    private static readonly ImmutableDictionary<int, OpCode> OpCodesByValue = typeof(OpCodes).GetFields(
        BindingFlags.Public | BindingFlags.Static)
        .Select(f => (OpCode)f.GetValue(null)!).ToImmutableDictionary(o => (int)(ushort)o.Value);

    private readonly HashSet<TypeUse> arrows = [];
    private readonly HashSet<TypeUse> tests = [];
    private readonly Dictionary<TypeName, TypeName?> bases = [];

    private AssemblyArrows()
    {
    }

    /// <summary>Every use of one type of these assemblies by another.</summary>
    public IReadOnlyCollection<TypeUse> Arrows => arrows;

    /// <summary>Every test for, or cast to, a type of these assemblies (<c>isinst</c>, <c>castclass</c>).</summary>
    public IReadOnlyCollection<TypeUse> TypeTests => tests;

    /// <summary>Base type of each type.</summary>
    public IReadOnlyDictionary<TypeName, TypeName?> Bases => bases;

    /// <summary>Reads assemblies from their files.</summary>
    public static AssemblyArrows Read(params IEnumerable<string> files)
    {
        var read = new AssemblyArrows();
        foreach (var file in files)
        {
            using var portable = new PEReader(File.OpenRead(file));
            new AssemblyReader(portable, read.arrows, read.tests, read.bases).Read();
        }

        return read;
    }

    /// <summary>Whether a type derives from another, at whatever distance.</summary>
    public bool Derives(TypeName type, TypeName from)
    {
        for (var at = bases.GetValueOrDefault(type); at is not null; at = bases.GetValueOrDefault(at))
        {
            if (at == from)
            {
                return true;
            }
        }

        return false;
    }

    private sealed class AssemblyReader(
        PEReader portable, HashSet<TypeUse> arrows, HashSet<TypeUse> tests, Dictionary<TypeName, TypeName?> bases)
    {
        private readonly MetadataReader metadata = portable.GetMetadataReader();

        public void Read()
        {
            foreach (var handle in metadata.TypeDefinitions)
            {
                Read(handle);
            }
        }

        private void Read(TypeDefinitionHandle handle)
        {
            var type = metadata.GetTypeDefinition(handle);
            var own = NameOf(handle);
            var used = new UsedTypes(this, t => Add(arrows, own, t));
            if (type.GetDeclaringType().IsNil)
            {
                bases[own] = type.BaseType.IsNil ? null : NameOf(type.BaseType);
            }

            used.See(type.BaseType);
            foreach (var i in type.GetInterfaceImplementations())
            {
                used.See(metadata.GetInterfaceImplementation(i).Interface);
            }

            foreach (var f in type.GetFields())
            {
                metadata.GetFieldDefinition(f).DecodeSignature(used, null);
            }

            foreach (var m in type.GetMethods())
            {
                var method = metadata.GetMethodDefinition(m);
                method.DecodeSignature(used, null);
                if (method.RelativeVirtualAddress != 0)
                {
                    Body(own, portable.GetMethodBody(method.RelativeVirtualAddress), used);
                }
            }
        }

        private void Body(TypeName own, MethodBodyBlock body, UsedTypes used)
        {
            if (!body.LocalSignature.IsNil)
            {
                metadata.GetStandaloneSignature(body.LocalSignature).DecodeLocalSignature(used, null);
            }

            var il = body.GetILReader();
            while (il.RemainingBytes > 0)
            {
                var value = (int)il.ReadByte();
                var code = OpCodesByValue[value == 0xFE ? 0xFE00 | il.ReadByte() : value];
                switch (code.OperandType)
                {
                    case OperandType.InlineType or OperandType.InlineMethod or OperandType.InlineField or OperandType.InlineTok:
                        var token = MetadataTokens.EntityHandle(il.ReadInt32());
                        used.See(token);
                        if ((code == OpCodes.Isinst || code == OpCodes.Castclass)
                            && token.Kind is HandleKind.TypeDefinition or HandleKind.TypeReference)
                        {
                            Add(tests, own, NameOf(token));
                        }

                        break;
                    case OperandType.InlineSwitch:
                        var targets = il.ReadInt32();
                        il.Offset += 4 * targets;
                        break;
                    default:
                        il.Offset += SizeOf(code.OperandType);
                        break;
                }
            }
        }

        private static int SizeOf(OperandType operand) => operand switch
        {
            OperandType.InlineNone => 0,
            OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
            OperandType.InlineVar => 2,
            OperandType.InlineI8 or OperandType.InlineR => 8,
            _ => 4,
        };

        private static void Add(HashSet<TypeUse> to, TypeName own, TypeName? other)
        {
            if (other is not null && other != own && IsOurs(own) && IsOurs(other))
            {
                to.Add(new(own, other));
            }
        }

        private static bool IsOurs(TypeName name) => name.Namespace.Split('.')[0] == "WireSketch";

        /// <summary>The outermost type that a definition or reference stands in; null for anything else.</summary>
        public TypeName? NameOf(EntityHandle handle) => handle.Kind switch
        {
            _ when handle.IsNil => null,
            HandleKind.TypeDefinition => NameOf((TypeDefinitionHandle)handle),
            HandleKind.TypeReference => NameOf((TypeReferenceHandle)handle),
            _ => null,
        };

        public TypeName NameOf(TypeDefinitionHandle handle)
        {
            var type = metadata.GetTypeDefinition(handle);
            return type.GetDeclaringType() is { IsNil: false } outer
                ? NameOf(outer)
                : new(metadata.GetString(type.Namespace), metadata.GetString(type.Name));
        }

        public TypeName NameOf(TypeReferenceHandle handle)
        {
            var type = metadata.GetTypeReference(handle);
            return type.ResolutionScope.Kind == HandleKind.TypeReference
                ? NameOf((TypeReferenceHandle)type.ResolutionScope)
                : new(metadata.GetString(type.Namespace), metadata.GetString(type.Name));
        }

        /// <summary>Tells of every type that signatures and tokens name.</summary>
        private sealed class UsedTypes(AssemblyReader reader, Action<TypeName?> tell) : ISignatureTypeProvider<object?, object?>
        {
            public void See(EntityHandle handle)
            {
                switch (handle.Kind)
                {
                    case HandleKind.TypeDefinition or HandleKind.TypeReference:
                        tell(reader.NameOf(handle));
                        break;
                    case HandleKind.TypeSpecification:
                        reader.metadata.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(this, null);
                        break;
                    case HandleKind.MethodDefinition:
                        tell(reader.NameOf(reader.metadata.GetMethodDefinition((MethodDefinitionHandle)handle).GetDeclaringType()));
                        break;
                    case HandleKind.FieldDefinition:
                        tell(reader.NameOf(reader.metadata.GetFieldDefinition((FieldDefinitionHandle)handle).GetDeclaringType()));
                        break;
                    case HandleKind.MemberReference:
                        See(reader.metadata.GetMemberReference((MemberReferenceHandle)handle).Parent);
                        break;
                    case HandleKind.MethodSpecification:
                        var method = reader.metadata.GetMethodSpecification((MethodSpecificationHandle)handle);
                        See(method.Method);
                        method.DecodeSignature(this, null);
                        break;
                    default:
                        break;
                }
            }

            public object? GetTypeFromDefinition(MetadataReader metadata, TypeDefinitionHandle handle, byte rawTypeKind) => Seen(handle);

            public object? GetTypeFromReference(MetadataReader metadata, TypeReferenceHandle handle, byte rawTypeKind) => Seen(handle);

            public object? GetTypeFromSpecification(
                MetadataReader metadata, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) =>
                Seen(handle);

            public object? GetArrayType(object? elementType, ArrayShape shape) => null;

            public object? GetByReferenceType(object? elementType) => null;

            public object? GetFunctionPointerType(MethodSignature<object?> signature) => null;

            public object? GetGenericInstantiation(object? genericType, ImmutableArray<object?> typeArguments) => null;

            public object? GetGenericMethodParameter(object? genericContext, int index) => null;

            public object? GetGenericTypeParameter(object? genericContext, int index) => null;

            public object? GetModifiedType(object? modifier, object? unmodifiedType, bool isRequired) => null;

            public object? GetPinnedType(object? elementType) => null;

            public object? GetPointerType(object? elementType) => null;

            public object? GetPrimitiveType(PrimitiveTypeCode typeCode) => null;

            public object? GetSZArrayType(object? elementType) => null;

            private object? Seen(EntityHandle handle)
            {
                See(handle);
                return null;
            }
        }
    }
}
