using System.Text.Json;
using LibraryDesk.Identification.Answers;

namespace LibraryDesk.Identification.Guides;

/// <summary>Reads a crop guide from its JSON text and finds every fault in it, each with its line.</summary>
public static class GuideFile
{
    private static readonly Dictionary<string, TraitKind> Kinds = new()
    {
        ["unordered"] = TraitKind.Unordered,
        ["ordered"] = TraitKind.Ordered,
        ["measured"] = TraitKind.Measured,
    };

    private static readonly Dictionary<string, Effort> Efforts = new()
    {
        ["look"] = Effort.Look,
        ["touch"] = Effort.Touch,
        ["cut"] = Effort.Cut,
    };

    private static readonly Dictionary<string, CandidateKind> CandidateKinds = new()
    {
        ["species"] = CandidateKind.Species,
        ["look-alike"] = CandidateKind.LookAlike,
        ["something-else"] = CandidateKind.SomethingElse,
    };

    private static readonly Dictionary<string, Word> Words = new()
    {
        ["always"] = Word.Always,
        ["usually"] = Word.Usually,
        ["sometimes"] = Word.Sometimes,
        ["rarely"] = Word.Rarely,
        ["never"] = Word.Never,
    };

    private static readonly Dictionary<string, Sureness> Surenesses = new()
    {
        ["sure"] = Sureness.Sure,
        ["fairly"] = Sureness.Fairly,
        ["faint"] = Sureness.Faint,
    };

    /// <summary>Reads and validates a guide. Either the guide is returned, or every fault found.</summary>
    public static GuideReading Read(ReadOnlySpan<byte> utf8)
    {
        var faults = new List<GuideFault>();
        var root = JsonLine.Parse(utf8, faults);
        if (root is null) return new GuideReading(null, faults);
        var lines = new GuideLines();
        var guide = ReadGuide(root, lines, faults);
        if (guide is not null) GuideRules.Check(guide, lines, faults);
        var sorted = faults.OrderBy(f => f.Line).ToList();
        return new GuideReading(sorted.Count == 0 ? guide : null, sorted);
    }

    private static CropGuide? ReadGuide(JsonLine root, GuideLines lines, List<GuideFault> faults)
    {
        var fields = JsonFields.Of(root, "the guide", faults);
        if (fields is null) return null;
        var format = fields.Number("format");
        if (format != CropGuide.CurrentFormat && !double.IsNaN(format)) fields.Fault(root.Member("format"), $"format {format} is not known; this desk reads format {CropGuide.CurrentFormat}");
        fields.TextOrNull("$schema");
        var guide = new CropGuide(
            fields.Text("id"),
            fields.Text("version"),
            fields.Text("crop"),
            fields.Text("genus"),
            List(fields, "sources", "a source", faults, ReadSource, lines.Sources),
            List(fields, "stages", "a stage", faults, f => new Stage(f.Text("id"), f.Text("name")), lines.Stages),
            List(fields, "parts", "a part", faults, f => new Part(f.Text("id"), f.Text("name"), f.Text("stage")), lines.Parts),
            List(fields, "traits", "a trait", faults, f => ReadTrait(f, lines, faults), lines.Traits),
            List(fields, "cautions", "a caution", faults, ReadCaution, lines.Cautions, required: false),
            List(fields, "candidates", "a candidate", faults, f => ReadCandidate(f, lines, faults), lines.Candidates),
            List(fields, "cells", "a cell", faults, ReadCell, lines.Cells, required: false),
            List(fields, "counts", "a count", faults, ReadCount, lines.Counts, required: false),
            ReadObserver(fields),
            fields.NumberOrNull("smoothing") ?? 0.5,
            fields.NumberOrNull("temper") ?? 1,
            fields.NumberOrNull("formSharing") ?? 0)
        {
            Answers = List(fields, "answers", "an answer count", faults, ReadAnswers, lines.Answers, required: false),
        };
        fields.Close();
        return guide;
    }

    private static List<T> List<T>(JsonFields parent, string name, string what, List<GuideFault> faults, Func<JsonFields, T> read, List<int> lines, bool required = true)
    {
        var list = new List<T>();
        foreach (var item in parent.Items(name, required))
        {
            var fields = JsonFields.Of(item, what, faults);
            if (fields is null) continue;
            list.Add(read(fields));
            lines.Add(item.Line);
            fields.Close();
        }

        return list;
    }

    private static Source ReadSource(JsonFields f) => new(f.Text("id"), f.Text("citation"), f.TextOrNull("licence") ?? "");

    private static Caution ReadCaution(JsonFields f) => new(f.Text("id"), f.Text("title"), f.Text("text"), f.Texts("sources"));

    private static Trait ReadTrait(JsonFields f, GuideLines lines, List<GuideFault> faults)
    {
        var id = f.Text("id");
        f.Trait = id.Length == 0 ? null : id;
        var asked = f.Flag("asked", otherwise: true);
        var stateLines = new List<int>();
        lines.States.Add(stateLines);
        return new Trait(
            id,
            f.Text("name"),
            asked ? f.Text("question") : f.TextOrNull("question") ?? "",
            f.TextOrNull("hint"),
            f.TextOrNull("why"),
            f.Text("part"),
            f.Choice("effort", Efforts) ?? Effort.Look,
            f.NumberOrNull("minutes") ?? 1,
            f.Choice("kind", Kinds) ?? Missing(f, "kind", TraitKind.Unordered),
            f.TextOrNull("unit"),
            f.Flag("variesWithinPlant", otherwise: false),
            asked,
            f.TextOrNull("caution"),
            f.TextOrNull("descriptor"),
            List(f, "states", "a state", faults, ReadState, stateLines, required: false),
            ReadConfused(f),
            f.TextOrNull("source"),
            ReadObserver(f));
    }

    private static List<IReadOnlyList<string>> ReadConfused(JsonFields f)
    {
        var groups = new List<IReadOnlyList<string>>();
        foreach (var group in f.Items("confused", required: false))
        {
            if (group.Kind == JsonValueKind.Array && group.Items.All(i => i.Kind == JsonValueKind.String))
            {
                groups.Add(group.Items.ConvertAll(i => i.Text!));
            }
            else
            {
                f.Fault(group, "\"confused\" must hold lists of state ids");
            }
        }

        return groups;
    }

    private static State ReadState(JsonFields f) => new(f.Text("id"), f.Text("name"), f.TextOrNull("hint"), f.TextOrNull("drawing"));

    private static Candidate ReadCandidate(JsonFields f, GuideLines lines, List<GuideFault> faults)
    {
        var formLines = new List<int>();
        lines.Forms.Add(formLines);
        return new Candidate(
            f.Text("id"),
            f.Text("name"),
            f.TextOrNull("common"),
            f.Choice("kind", CandidateKinds) ?? Missing(f, "kind", CandidateKind.Species),
            f.Flag("domesticated", otherwise: false),
            f.Number("prior"),
            f.TextOrNull("priorBasis"),
            f.Texts("cautions"),
            f.TextOrNull("card"),
            f.Texts("sources"),
            f.Texts("profiles"),
            List(f, "forms", "a form", faults, ReadForm, formLines, required: false));
    }

    private static Form ReadForm(JsonFields f) =>
        new(f.Text("id"), f.Text("name"), f.Number("weight"), f.TextOrNull("weightBasis"), f.Texts("from"));

    private static Cell ReadCell(JsonFields f)
    {
        var of = f.Text("of");
        var trait = f.Text("trait");
        f.Trait = trait.Length == 0 ? null : trait;
        return new Cell(
            of,
            trait,
            f.TextOrNull("state"),
            f.NumberOrNull("low"),
            f.NumberOrNull("high"),
            f.Choice("word", Words),
            f.NumberOrNull("p"),
            ReadWhole(f, "n"),
            f.TextOrNull("basis"),
            f.Text("source"),
            f.Line);
    }

    private static CountRow ReadCount(JsonFields f)
    {
        var of = f.Text("of");
        var trait = f.Text("trait");
        f.Trait = trait.Length == 0 ? null : trait;
        return new CountRow(of, trait, f.TextOrNull("state"), f.Number("count"), f.NumberOrNull("meanLog"), f.NumberOrNull("sdLog"), f.Text("from"), f.Line);
    }

    private static AnswerCount ReadAnswers(JsonFields f)
    {
        var trait = f.Text("trait");
        f.Trait = trait.Length == 0 ? null : trait;
        return new AnswerCount(trait, f.Choice("sure", Surenesses) ?? Missing(f, "sure", Sureness.Sure), f.Number("right"), f.Number("count"), f.Text("from"), f.Line);
    }

    private static ObserverReliability? ReadObserver(JsonFields fields)
    {
        var f = fields.Part("observer");
        if (f is null) return null;
        var observer = new ObserverReliability(f.Number("sure"), f.Number("fairly"), f.Number("faint"));
        f.Close();
        return observer;
    }

    private static int? ReadWhole(JsonFields f, string name)
    {
        var number = f.NumberOrNull(name);
        if (number is null) return null;
        if (number is >= 1 and <= int.MaxValue && Math.Floor(number.Value) == number.Value) return (int)number;
        f.Fault(null, $"\"{name}\" must be a whole number above 0");
        return null;
    }

    private static T Missing<T>(JsonFields f, string name, T otherwise)
    {
        // A wrong word was noted by Choice; only a missing one is new here.
        if (f.TextOrNull(name) is null) f.Fault(null, $"\"{name}\" is missing");
        return otherwise;
    }
}
