using System.Reflection.Emit;
using System.Reflection.Metadata;

namespace WireSketch.Testing.House;

/// <summary>The metadata tokens in the instructions of a method body (ECMA-335, partition III).</summary>
internal static class InstructionTokens
{
    private static readonly Dictionary<ushort, OpCode> Codes = typeof(OpCodes).GetFields()
        .Select(f => (OpCode)f.GetValue(null)!)
        .ToDictionary(c => (ushort)c.Value);

    public static IEnumerable<int> Of(BlobReader code)
    {
        var tokens = new List<int>();
        while (code.RemainingBytes > 0)
        {
            var first = code.ReadByte();
            var value = first == 0xFE ? (ushort)((first << 8) | code.ReadByte()) : first;
            switch (Codes[value].OperandType)
            {
                case OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType:
                    tokens.Add(code.ReadInt32());
                    break;
                case OperandType.InlineSwitch:
                    var targets = code.ReadInt32();
                    code.Offset += 4 * targets;
                    break;
                case OperandType.InlineI8 or OperandType.InlineR:
                    code.Offset += 8;
                    break;
                case OperandType.InlineBrTarget or OperandType.InlineI or OperandType.InlineSig or OperandType.InlineString
                    or OperandType.ShortInlineR:
                    code.Offset += 4;
                    break;
                case OperandType.InlineVar:
                    code.Offset += 2;
                    break;
                case OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar:
                    code.Offset += 1;
                    break;
            }
        }

        return tokens;
    }
}
