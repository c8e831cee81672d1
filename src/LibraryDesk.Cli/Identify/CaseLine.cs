using System.Buffers;
using System.Text.Encodings.Web;
using System.Text.Json;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Cli.Identify;

/// <summary>Writes cases as JSON, one object a line.</summary>
internal sealed class CaseLine : IDisposable
{
    private const int MostLooks = 3;

    /// <summary>Forms less likely than 1 in 2,000 are not printed.</summary>
    private const double LeastForm = 0.0005;

    private readonly ArrayBufferWriter<byte> _buffer;
    private readonly Utf8JsonWriter _json;

    public CaseLine(ArrayBufferWriter<byte> buffer)
    {
        _buffer = buffer;
        _json = new Utf8JsonWriter(buffer, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
    }

    public void Dispose() => _json.Dispose();

    public void Write(string name, CompiledGuide guide, Evidence evidence, Prior prior)
    {
        var ranking = Ranker.Rank(guide, evidence, prior);
        _json.WriteStartObject();
        _json.WriteString("case"u8, name);
        WriteCandidates(ranking);
        WriteForms(ranking);
        WriteLooks(LookPlanner.Plan(guide, evidence, prior, partsPresent: null, MostLooks, withOutlooks: false));
        WriteTypicality(TypicalityFinder.Of(guide, evidence, prior, ranking.Candidates[0].Id)!);
        _json.WriteStartObject("guide"u8);
        _json.WriteString("id"u8, ranking.GuideId);
        _json.WriteString("version"u8, ranking.GuideVersion);
        _json.WriteEndObject();
        _json.WriteEndObject();
        _json.Flush();
        _json.Reset();
        _buffer.Write("\n"u8);
    }

    private void WriteCandidates(Ranking ranking)
    {
        _json.WriteStartArray("candidates"u8);
        foreach (var candidate in ranking.Candidates)
        {
            _json.WriteStartObject();
            _json.WriteString("id"u8, candidate.Id);
            _json.WriteString("name"u8, candidate.Name);
            _json.WriteNumber("probability"u8, candidate.Probability);
            _json.WriteString("odds"u8, candidate.Odds.ToString());
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
    }

    private void WriteForms(Ranking ranking)
    {
        _json.WriteStartArray("forms"u8);
        foreach (var form in ranking.Forms)
        {
            // In order of probability: the rest are smaller still, and there are many.
            if (form.Probability < LeastForm) break;
            _json.WriteStartObject();
            _json.WriteString("candidate"u8, form.Candidate);
            _json.WriteString("form"u8, form.Form);
            _json.WriteString("name"u8, form.Name);
            _json.WriteNumber("probability"u8, form.Probability);
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
    }

    private void WriteLooks(LookPlan plan)
    {
        _json.WriteStartArray("bestNextLooks"u8);
        foreach (var look in plan.Now)
        {
            _json.WriteStartObject();
            _json.WriteString("trait"u8, look.Trait);
            _json.WriteString("question"u8, look.Question);
            _json.WriteString("part"u8, look.Part);
            _json.WriteNumber("bits"u8, look.Bits);
            _json.WriteNumber("bitsPerEffort"u8, look.BitsPerEffort);
            _json.WriteBoolean("secondLook"u8, look.IsSecondLook);
            _json.WriteEndObject();
        }

        _json.WriteEndArray();
    }

    private void WriteTypicality(Typicality typicality)
    {
        _json.WriteStartObject("typicality"u8);
        _json.WriteString("candidate"u8, typicality.Candidate);
        _json.WriteNumber("tail"u8, typicality.Tail);
        _json.WriteString("word"u8, typicality.Word switch
        {
            TypicalityWord.Ordinary => "ordinary",
            TypicalityWord.Unusual => "unusual",
            _ => "very unusual",
        });
        _json.WriteBoolean("exact"u8, typicality.IsExact);
        _json.WriteString("ifWrong"u8, typicality.IfWrong);
        _json.WriteEndObject();
    }
}
