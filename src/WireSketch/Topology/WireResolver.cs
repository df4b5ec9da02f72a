using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Topology;

/// <summary>Fills in every default of a run's wire.</summary>
internal static class WireResolver
{
    private static readonly Celsius AssumedInsulation = Assume.Insulation.Value;

    private static readonly WireSize LinePairSize = Assume.SignalSize.Value;

    private static readonly WireSize Thinnest = Assume.Size.Value;

    public static WireProperties Resolve(
        Run run,
        IReadOnlyDictionary<string, WireType> types,
        SizeChoices choices,
        ICollection<Finding> findings)
    {
        if (run.Wire is not { } choice)
        {
            if (!run.WireIsRefused)
            {
                findings.Add(new("spec/missing", Severity.Error, $"{run.Id} does not say what wire it is", run.Name.At)
                {
                    Help = "add wire: with a size and color, such as wire: 4 AWG red; or wire: line pair; or wire: auto",
                    Subjects = [run.Id],
                });
            }

            return Plain(Thinnest, "?", []);
        }

        if (choice.LinePair)
        {
            return Plain(LinePairSize, "line pair", []) with { Cores = 4, IsLinePair = true };
        }

        if (choice.TypeId is { } id)
        {
            if (types.TryGetValue(id, out var type))
            {
                var size = type.Size?.Value ?? Thinnest;
                return new(
                    size,
                    type.Size?.Words ?? size.ToString(),
                    type.Material,
                    type.Strands?.Value ?? Stranding.Fine,
                    type.Insulation?.Value ?? AssumedInsulation,
                    type.Insulation is null, type.Colors, choice.Conductors, false, type, false)
                { CoreColors = type.CoreColors };
            }

            // The reader has said already that there is no such type.
            return Plain(Thinnest, id, []);
        }

        if (choice.Auto)
        {
            var chosen = choices.Wires.TryGetValue(run.Id, out var size) ? size : Thinnest;
            return Plain(chosen, chosen.ToString(), choice.Colors) with
            {
                IsAuto = true,
                CoreColors = choice.CoreColors,
                Material = choice.Material,
                Insulation = choice.Insulation ?? AssumedInsulation,
                InsulationIsAssumed = choice.Insulation is null
            };
        }

        return new(
            choice.Size ?? Thinnest, choice.SizeWords ?? "?", choice.Material, Stranding.Fine, choice.Insulation ?? AssumedInsulation,
            choice.Insulation is null,
            choice.Colors, choice.Conductors, false, null, false)
        { CoreColors = choice.CoreColors };
    }

    /// <summary>Reports colors of cores that are more or fewer than the cores.</summary>
    public static void CheckCores(WiredRun run, ICollection<Finding> findings)
    {
        var cores = Math.Max(run.Wire.Cores, run.From.Sum(e => e.Nodes.Length));
        if (run.Wire.CoreColors.Length is var colors && colors > 0 && colors != cores)
        {
            findings.Add(new(
                "spec/value",
                Severity.Error,
                $"{run.Id} has {cores} core{(cores == 1 ? "" : "s")}, but the colors of {colors} are written",
                run.Run.Wire!.Words.At)
            {
                Help = "write one color for each core, joined by + in the order of its terminals; a tracer stands behind a stroke",
                Subjects = [run.Id],
            });
        }
    }

    private static WireProperties Plain(WireSize size, string words, ImmutableArray<string> colors) =>
        new(size, words, ConductorMaterial.Copper, Stranding.Fine, AssumedInsulation, true, colors, 1, false, null, false);
}
