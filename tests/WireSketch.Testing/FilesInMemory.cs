using WireSketch.Text;

namespace WireSketch.Testing;

/// <summary>Files that a spec may use, by name.</summary>
public sealed class FilesInMemory(params (string Name, string Text)[] files) : ISpecFiles
{
    public static FilesInMemory None { get; } = new();

    public SourceFile? Read(SourceFile from, string path, out string why)
    {
        var found = files.FirstOrDefault(f => f.Name == path);
        why = found.Name is null ? "there is no such file" : "";
        return found.Name is null ? null : new SourceFile(found.Name, found.Text);
    }
}
