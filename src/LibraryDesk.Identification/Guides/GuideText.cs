using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace LibraryDesk.Identification.Guides;

/// <summary>Writes a crop guide as JSON, one cell a line, so that faults and differences between versions have exact lines.</summary>
public static class GuideText
{
    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of a guide as UTF-8. Reading it gives the same guide.</summary>
    /// <exception cref="ArgumentException">The guide is a translation; the guide as it was written is what is kept.</exception>
    public static byte[] Write(CropGuide guide)
    {
        if (guide.IsTranslated) throw new ArgumentException("A translated guide is for reading. Write the guide it was translated from.", nameof(guide));
        var text = new StringBuilder("{\n");
        text.Append("  \"format\": ").Append(CropGuide.CurrentFormat).Append(",\n");
        Member(text, "id", guide.Id);
        Member(text, "version", guide.Version);
        Member(text, "crop", guide.Crop);
        Member(text, "genus", guide.Genus);
        if (guide.Observer is { } o) text.Append("  \"observer\": ").Append(Row(w => Observer(w, o))).Append(",\n");
        text.Append("  \"smoothing\": ").Append(JsonSerializer.Serialize(guide.Smoothing)).Append(",\n");
        text.Append("  \"temper\": ").Append(JsonSerializer.Serialize(guide.Temper)).Append(",\n");
        if (guide.FormSharing > 0) text.Append("  \"formSharing\": ").Append(JsonSerializer.Serialize(guide.FormSharing)).Append(",\n");
        List(text, "sources", guide.Sources, Source);
        List(text, "stages", guide.Stages, Stage);
        List(text, "parts", guide.Parts, Part);
        List(text, "traits", guide.Traits, Trait);
        List(text, "cautions", guide.Cautions, Caution);
        List(text, "candidates", guide.Candidates, Candidate);
        List(text, "cells", guide.Cells, Cell);
        List(text, "counts", guide.Counts, Count, isLast: guide.Answers.Count == 0);
        if (guide.Answers.Count > 0) List(text, "answers", guide.Answers, Answers, isLast: true);
        return Encoding.UTF8.GetBytes(text.Append("}\n").ToString());
    }

    private static void Member(StringBuilder text, string name, string value) =>
        text.Append("  \"").Append(name).Append("\": ").Append(Row(w => w.WriteStringValue(value))).Append(",\n");

    private static void List<T>(StringBuilder text, string name, IReadOnlyList<T> items, Action<Utf8JsonWriter, T> write, bool isLast = false)
    {
        text.Append("  \"").Append(name).Append("\": [");
        for (var i = 0; i < items.Count; i++)
        {
            var item = items[i];
            text.Append(i == 0 ? "\n    " : ",\n    ").Append(Row(w => Braced(w, () => write(w, item))));
        }

        text.Append(items.Count == 0 ? "]" : "\n  ]").Append(isLast ? "\n" : ",\n");
    }

    private static string Row(Action<Utf8JsonWriter> write)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var json = new Utf8JsonWriter(buffer, Options)) write(json);
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }

    private static void Braced(Utf8JsonWriter w, Action write)
    {
        w.WriteStartObject();
        write();
        w.WriteEndObject();
    }

    private static void Observer(Utf8JsonWriter w, ObserverReliability o) => Braced(w, () =>
    {
        w.WriteNumber("sure", o.Sure);
        w.WriteNumber("fairly", o.Fairly);
        w.WriteNumber("faint", o.Faint);
    });

    private static void Source(Utf8JsonWriter w, Source s)
    {
        w.WriteString("id", s.Id);
        w.WriteString("citation", s.Citation);
        if (s.Licence.Length > 0) w.WriteString("licence", s.Licence);
    }

    private static void Stage(Utf8JsonWriter w, Stage s)
    {
        w.WriteString("id", s.Id);
        w.WriteString("name", s.Name);
    }

    private static void Part(Utf8JsonWriter w, Part p)
    {
        w.WriteString("id", p.Id);
        w.WriteString("name", p.Name);
        w.WriteString("stage", p.Stage);
    }

    private static void Caution(Utf8JsonWriter w, Caution c)
    {
        w.WriteString("id", c.Id);
        w.WriteString("title", c.Title);
        w.WriteString("text", c.Text);
        Texts(w, "sources", c.Sources);
    }

    private static void Trait(Utf8JsonWriter w, Trait t)
    {
        w.WriteString("id", t.Id);
        w.WriteString("name", t.Name);
        if (t.Question.Length > 0) w.WriteString("question", t.Question);
        Optional(w, "hint", t.Hint);
        Optional(w, "why", t.Why);
        w.WriteString("part", t.Part);
        w.WriteString("effort", t.Effort switch { Effort.Cut => "cut", Effort.Touch => "touch", _ => "look" });
        w.WriteNumber("minutes", t.Minutes);
        w.WriteString("kind", t.Kind switch { TraitKind.Measured => "measured", TraitKind.Ordered => "ordered", _ => "unordered" });
        Optional(w, "unit", t.Unit);
        w.WriteBoolean("variesWithinPlant", t.VariesWithinPlant);
        w.WriteBoolean("asked", t.Asked);
        Optional(w, "caution", t.Caution);
        Optional(w, "descriptor", t.Descriptor);
        if (t.States.Count > 0) States(w, t.States);
        if (t.Confused.Count > 0) Confused(w, t.Confused);
        Optional(w, "source", t.Source);
        if (t.Observer is null) return;
        w.WritePropertyName("observer");
        Observer(w, t.Observer);
    }

    private static void States(Utf8JsonWriter w, IReadOnlyList<State> states)
    {
        w.WriteStartArray("states");
        foreach (var s in states)
        {
            Braced(w, () =>
            {
                w.WriteString("id", s.Id);
                w.WriteString("name", s.Name);
                Optional(w, "hint", s.Hint);
                Optional(w, "drawing", s.Drawing);
            });
        }

        w.WriteEndArray();
    }

    private static void Confused(Utf8JsonWriter w, IReadOnlyList<IReadOnlyList<string>> groups)
    {
        w.WriteStartArray("confused");
        foreach (var group in groups)
        {
            w.WriteStartArray();
            foreach (var state in group) w.WriteStringValue(state);
            w.WriteEndArray();
        }

        w.WriteEndArray();
    }

    private static void Candidate(Utf8JsonWriter w, Candidate c)
    {
        w.WriteString("id", c.Id);
        w.WriteString("name", c.Name);
        Optional(w, "common", c.Common);
        w.WriteString("kind", c.Kind switch { CandidateKind.LookAlike => "look-alike", CandidateKind.SomethingElse => "something-else", _ => "species" });
        w.WriteBoolean("domesticated", c.Domesticated);
        w.WriteNumber("prior", c.Prior);
        Optional(w, "priorBasis", c.PriorBasis);
        Texts(w, "cautions", c.Cautions);
        Optional(w, "card", c.Card);
        Texts(w, "sources", c.Sources);
        Texts(w, "profiles", c.Profiles);
        if (c.Forms.Count == 0) return;
        w.WriteStartArray("forms");
        foreach (var f in c.Forms)
        {
            Braced(w, () =>
            {
                w.WriteString("id", f.Id);
                w.WriteString("name", f.Name);
                w.WriteNumber("weight", f.Weight);
                Optional(w, "weightBasis", f.WeightBasis);
                Texts(w, "from", f.From);
            });
        }

        w.WriteEndArray();
    }

    private static void Cell(Utf8JsonWriter w, Cell c)
    {
        w.WriteString("of", c.Of);
        w.WriteString("trait", c.Trait);
        Optional(w, "state", c.State);
        Optional(w, "low", c.Low);
        Optional(w, "high", c.High);
        Optional(w, "word", c.Word?.ToString().ToLowerInvariant());
        Optional(w, "p", c.P);
        Optional(w, "n", c.N);
        Optional(w, "basis", c.Basis);
        w.WriteString("source", c.Source);
    }

    private static void Count(Utf8JsonWriter w, CountRow c)
    {
        w.WriteString("of", c.Of);
        w.WriteString("trait", c.Trait);
        Optional(w, "state", c.State);
        w.WriteNumber("count", c.Count);
        Optional(w, "meanLog", c.MeanLog);
        Optional(w, "sdLog", c.SdLog);
        w.WriteString("from", c.From);
    }

    private static void Answers(Utf8JsonWriter w, AnswerCount c)
    {
        w.WriteString("trait", c.Trait);
        w.WriteString("sure", c.Sure.ToString().ToLowerInvariant());
        w.WriteNumber("right", c.Right);
        w.WriteNumber("count", c.Count);
        w.WriteString("from", c.From);
    }

    private static void Texts(Utf8JsonWriter w, string name, IReadOnlyList<string> texts)
    {
        if (texts.Count == 0) return;
        w.WriteStartArray(name);
        foreach (var text in texts) w.WriteStringValue(text);
        w.WriteEndArray();
    }

    private static void Optional(Utf8JsonWriter w, string name, string? value)
    {
        if (value is not null) w.WriteString(name, value);
    }

    private static void Optional(Utf8JsonWriter w, string name, double? value)
    {
        if (value is { } number) w.WriteNumber(name, number);
    }
}
