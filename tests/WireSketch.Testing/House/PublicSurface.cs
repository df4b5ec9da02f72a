using System.Reflection;
using System.Runtime.CompilerServices;

namespace WireSketch.Testing.House;

/// <summary>What an assembly shows to others, a line for each type and member, sorted.</summary>
public static class PublicSurface
{
    private const BindingFlags Declared =
        BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<Type, string> Keywords = new()
    {
        [typeof(void)] = "void",
        [typeof(bool)] = "bool",
        [typeof(byte)] = "byte",
        [typeof(int)] = "int",
        [typeof(long)] = "long",
        [typeof(double)] = "double",
        [typeof(string)] = "string",
        [typeof(object)] = "object",
        [typeof(char)] = "char",
    };

    /// <summary>The lines; what the compiler adds to records is left out.</summary>
    public static string Of(Assembly assembly) =>
        string.Concat(assembly.GetExportedTypes().SelectMany(Lines).Order(StringComparer.Ordinal).Select(l => l + "\n"));

    private static IEnumerable<string> Lines(Type type)
    {
        yield return $"{Full(type)} : {KindOf(type)}";
        if (type.IsEnum)
        {
            foreach (var name in Enum.GetNames(type))
            {
                yield return $"{Full(type)}.{name}";
            }

            yield break;
        }

        var written = type.GetMembers(Declared).Where(m => !m.IsDefined(typeof(CompilerGeneratedAttribute)));
        foreach (var member in written.Select(Line).OfType<string>())
        {
            yield return $"{Full(type)}.{member}";
        }
    }

    /// <summary>A member as it is called; null for one that is not shown, or that stands under another.</summary>
    private static string? Line(MemberInfo member) => member switch
    {
        FieldInfo f when IsShown(f.IsPublic, f.IsFamily) => $"{f.Name} : {Name(f.FieldType)}",
        PropertyInfo p when Shown(p.GetMethod) || Shown(p.SetMethod) => $"{p.Name}{Indexer(p)} : {Name(p.PropertyType)}{Access(p)}",
        ConstructorInfo c when Shown(c) => $"new{Parameters(c)}",
        MethodInfo m when Shown(m) && (!m.IsSpecialName || m.Name.StartsWith("op_", StringComparison.Ordinal)) && !IsOfRecords(m) =>
            $"{m.Name}{Generics(m)}{Parameters(m)} : {Name(m.ReturnType)}",
        _ => null,
    };

    private static string Access(PropertyInfo property) => Shown(property.SetMethod) ? " get set" : " get";

    private static string Indexer(PropertyInfo property) =>
        property.GetIndexParameters() is { Length: > 0 } at ? $"[{string.Join(", ", at.Select(p => Name(p.ParameterType)))}]" : "";

    private static bool Shown(MethodBase? method) => method is not null && IsShown(method.IsPublic, method.IsFamily);

    private static bool IsShown(bool isPublic, bool isFamily) => isPublic || isFamily;

    /// <summary>What every type has, or every record, says nothing of this one.</summary>
    private static bool IsOfRecords(MethodInfo method) =>
        method.Name is "Equals" or "GetHashCode" or "ToString" or "Deconstruct" or "op_Equality" or "op_Inequality" or "PrintMembers";

    private static string Generics(MethodInfo method) =>
        method.IsGenericMethod ? $"<{string.Join(", ", method.GetGenericArguments().Select(Name))}>" : "";

    private static string Parameters(MethodBase method) =>
        "(" + string.Join(", ", method.GetParameters().Select(Parameter)) + ")";

    private static string Parameter(ParameterInfo parameter) =>
        $"{Name(parameter.ParameterType)} {parameter.Name}{(parameter.HasDefaultValue ? " = …" : "")}";

    private static string KindOf(Type type) =>
        type.IsEnum ? "enum"
            : type.IsInterface ? "interface"
            : type.IsValueType ? "struct"
            : type is { IsAbstract: true, IsSealed: true } ? "static class"
            : type.IsAbstract ? "abstract class"
            : "class";

    private static string Full(Type type) => $"{type.Namespace}.{Short(type)}";

    private static string Short(Type type)
    {
        var name = type.Name.Split('`')[0];
        var own = type.IsGenericType ? $"{name}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>" : name;
        return type.DeclaringType is { } around && !type.IsGenericParameter ? $"{Short(around)}.{own}" : own;
    }

    private static string Name(Type type) =>
        Keywords.TryGetValue(type, out var word) ? word
            : Nullable.GetUnderlyingType(type) is { } value ? Name(value) + "?"
            : type.IsArray ? Name(type.GetElementType()!) + "[]"
            : type.IsByRef ? "ref " + Name(type.GetElementType()!)
            : type.IsGenericParameter ? type.Name
            : Short(type);
}
