using System.Diagnostics;
using WireSketch.ExactTable;
using WireSketch.Quantities;
using WireSketch.Testing;

namespace WireSketch.Tests.Quantities;

/// <summary>The door to powers and logarithms gives the same bytes on every system.</summary>
public sealed class ExactTests
{
    private const string Baseline = "tests/WireSketch.Tests/Quantities/exact.txt";

    private static readonly string? Emulator = (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, "qemu-aarch64")).FirstOrDefault(File.Exists);

    /// <summary>To 13 digits; values of a handbook of mathematical tables (ln 2, lg 2, cube root of 7, sine of 1) from memory.</summary>
    [Fact]
    public void Values_are_rounded_to_thirteen_digits()
    {
        Assert.Equal(0.6931471805599, Exact.Log(2));
        Assert.Equal(0.3010299956640, Exact.Log10(2));
        Assert.Equal(1.912931182772, Exact.Cbrt(7));
        Assert.Equal(0.8414709848079, Exact.Sin(1));
        Assert.Equal(1024, Exact.Pow(2, 10));
        Assert.Equal(2.718281828459e0, Exact.Exp(1));
        Assert.Equal(double.PositiveInfinity, Exact.Pow(10, 400));
        Assert.Equal(double.NegativeInfinity, Exact.Log(0));
        Assert.True(double.IsNaN(Exact.Log(-1)));
    }

    [Fact]
    public void The_table_of_values_is_the_committed_one() => Testing.Baseline.Match(Baseline, Table.Print());

    /// <summary>The same program, with its own runtime, on an emulated arm64 processor with that processor's C library.</summary>
    [Fact]
    public void The_table_of_values_is_the_same_on_arm64()
    {
        const string Library = "/usr/aarch64-linux-gnu";
        Assert.SkipWhen(
            Emulator is null || !Directory.Exists(Library),
            "No emulator of arm64: install the Debian packages qemu-user, libc6-arm64-cross, libstdc++6-arm64-cross and "
                + "libgcc-s1-arm64-cross.");
        var output = Directory.CreateTempSubdirectory("wiresketch-arm64-");
        try
        {
            var project = Path.Combine(Repository.Root, "tests/WireSketch.ExactTable/WireSketch.ExactTable.csproj");
            var (built, said, trouble) = Run(
                "dotnet",
                ["build", project, "-o", output.FullName, "-v", "q", "--nologo", "--disable-build-servers"]);
            Assert.True(built == 0, said + trouble);
            var (code, table, processor) = Run(Emulator!, ["-L", Library, Path.Combine(output.FullName, "WireSketch.ExactTable")]);
            Assert.Equal((0, "Arm64"), (code, processor));
            Assert.Equal(Repository.Read(Baseline), table);
        }
        finally
        {
            output.Delete(recursive: true);
        }
    }

    private static (int Code, string Output, string Error) Run(string program, string[] arguments)
    {
        using var process =
            Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }
}
