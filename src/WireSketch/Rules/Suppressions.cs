using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Text;

namespace WireSketch.Rules;

/// <summary>
/// Marks the findings that a person looked at and accepted. An entry accepts only findings of rules; what is wrong with the
/// text itself (a name that is not there, a value without a unit) cannot be accepted.
/// </summary>
public static class Suppressions
{
    /// <summary>The id under which an entry is reported that accepts nothing.</summary>
    public const string Unmatched = "spec/accept-unmatched";

    /// <summary>What is to be said about such an entry.</summary>
    public static RuleCard Card { get; } = new(
        Id: Unmatched,
        Severity.Warning,
        Title: "An accepted finding is not there",
        Why: """
            An acceptance that matches nothing is a promise that nobody checks any more: the matter was settled, or the run has another
            name, or a slip keeps the entry from working. It needs the rule's id, the place, and a reason that the next technician
            understands.
            """,
        new Basis.Reasoning("every entry under accept must match a finding"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            accept:
              - { rule: ground/long, at: G1, because: measured 0.01 V under load } #! spec/accept-unmatched
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: painted }
            accept:
              - { rule: ground/bad-surface, at: bolt, because: ground to bare metal at delivery; painted over against rust }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """);

    /// <summary>Gives every matching finding the reason of its entry, and adds a finding for every entry that matches none.</summary>
    public static ImmutableArray<Finding> Apply(Spec spec, ImmutableArray<Finding> findings)
    {
        if (spec.Accepted.IsEmpty)
        {
            return findings;
        }

        var known = RuleBook.All.Select(r => r.Card.Id).ToHashSet(StringComparer.Ordinal);
        var all = findings.ToArray();
        var idle = new List<Finding>();
        foreach (var entry in spec.Accepted)
        {
            if (Trouble(entry, known) is { } trouble)
            {
                idle.Add(Idle(entry, trouble.Message, trouble.At, trouble.Help));
                continue;
            }

            var (rule, at, because) = (entry.Rule!.Value, entry.At!.Value, entry.Because!.Value.Value.Trim());
            var matches = 0;
            for (var i = 0; i < all.Length; i++)
            {
                if (all[i].Rule == rule.Value && all[i].Subjects.Any(s => Concerns(s, at.Value)))
                {
                    matches++;
                    all[i] = Acceptance.Refuses(entry, all[i]) is { } why
                        ? all[i] with
                        {
                            Notes = [
                                .. all[i].Notes,
                                new($"{why}; to accept it as it is now: {Acceptance.Entry(entry, all[i])}", entry.Place)
                            ]
                        }
                        : all[i] with { AcceptedBecause = because, Notes = [.. all[i].Notes.Where(n => n.At != entry.Place)] };
                }
            }

            if (matches == 0)
            {
                idle.Add(Idle(
                    entry,
                    Nothing(rule.Value, at.Value, all),
                    at.At,
                    "take the entry out if the matter is settled, or name what the finding concerns"));
            }
        }

        return Finding.InOrder([.. all, .. idle]);
    }

    /// <summary>An entry at a device or a run also covers its terminals and its pieces: <c>amp</c> covers <c>amp.+</c>.</summary>
    private static bool Concerns(string subject, string at) =>
        subject == at || (subject.StartsWith(at, StringComparison.Ordinal) && subject[at.Length] == '.');

    private static (string Message, SourceSpan At, string Help)? Trouble(AcceptEntry entry, HashSet<string> known)
    {
        if (entry.Rule is not { } rule)
        {
            return (
                "this entry names no rule, so it accepts nothing",
                entry.Place,
                "add rule: with the id that stands beside the finding, such as rule: supply/drop");
        }

        if (FormerRuleIds.NowOf(rule.Value) is { } now)
        {
            return ($"{rule.Value} is called {now} now, so this entry accepts nothing", rule.At, $"write rule: {now}");
        }

        if (!known.Contains(rule.Value))
        {
            return rule.Value.StartsWith("spec/", StringComparison.Ordinal)
                ? ($"{rule.Value} cannot be accepted: it tells what is wrong with the text itself", rule.At, "mend the text")
                : ($"there is no rule {rule.Value}", rule.At, Near(rule.Value, known));
        }

        if (entry.At is null)
        {
            return (
                $"this entry does not say where {rule.Value} is accepted, so it accepts nothing",
                entry.Place,
                "add at: with the gear, run or terminal that the finding concerns");
        }

        return string.IsNullOrWhiteSpace(entry.Because?.Value)
            ? (
                $"{rule.Value} at {entry.At.Value.Value} is accepted without a reason, so it is not accepted",
                entry.Place,
                "add because: with the reason, for the next technician")
            : null;
    }

    private static string Near(string rule, HashSet<string> known)
    {
        var slash = rule.IndexOf('/', StringComparison.Ordinal);
        var group = slash < 0 ? rule : rule[..slash];
        var slug = rule[(slash + 1)..];
        var inGroup = known.Where(k => k.StartsWith(group + "/", StringComparison.Ordinal)).Order(StringComparer.Ordinal).ToArray();
        var elsewhere = known.Where(k => k.EndsWith("/" + slug, StringComparison.Ordinal)).Order(StringComparer.Ordinal).FirstOrDefault();
        return elsewhere is not null ? $"did you mean {elsewhere}?"
            : inGroup.Length > 0 ? $"the rules of its group are {string.Join(", ", inGroup)}"
            : "write the id that stands beside the finding, such as supply/drop";
    }

    private static string Nothing(string rule, string at, Finding[] all)
    {
        var places = all.Where(f => f.Rule == rule && !f.Subjects.IsEmpty)
            .Select(f => f.Subjects[0])
            .Distinct(StringComparer.Ordinal)
            .ToArray();
        return places.Length == 0 ? $"{rule} at {at} is accepted, but nothing breaks that rule any more"
            : $"{rule} at {at} is accepted, but the rule is broken at {string.Join(", ", places)} and not there";
    }

    private static Finding Idle(
        AcceptEntry entry, string message, SourceSpan at, string help) => new(Unmatched, Severity.Warning, message, at)
        {
            Help = help,
            Subjects = entry.At is { } where ? [where.Value] : [],
        };
}
