using WireSketch.ExactTable;

Console.Out.Write(Table.Print());
Console.Error.Write(System.Runtime.InteropServices.RuntimeInformation.ProcessArchitecture);
