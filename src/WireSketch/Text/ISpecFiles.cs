namespace WireSketch.Text;

/// <summary>The one door to the outside: reads the files that a spec names.</summary>
public interface ISpecFiles
{
    /// <summary>
    /// Reads a file named in a spec, relative to the file that names it. Returns null where there is none, where it lies outside
    /// the folders that may be read, or where it cannot be read; <paramref name="why"/> then says which, in the user's words.
    /// </summary>
    SourceFile? Read(SourceFile from, string path, out string why);
}
