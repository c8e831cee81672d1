using System.Buffers;
using System.Globalization;
using System.Text;
using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Looks;
using LibraryDesk.Identification.Odds;
using LibraryDesk.Identification.Reasons;

namespace LibraryDesk.Cli.Identify;

/// <summary>Writes cases as JSON, one object a line. Cautions stand before the odds they belong to.</summary>
internal sealed class CaseLine(ArrayBufferWriter<byte> buffer, JsonFragments fragments)
{
    private const int MostLooks = 3;

    /// <summary>Forms less likely than 1 in 2,000 are not printed.</summary>
    private const double LeastForm = 0.0005;

    /// <param name="parts">Ids of the parts the plant carries; null takes all as present, and then there is nothing to wait for.</param>
    public void Write(string name, CompiledGuide guide, Evidence evidence, Prior prior, IReadOnlySet<string>? parts)
    {
        var ranking = Ranker.Rank(guide, evidence, prior);
        var plan = LookPlanner.Plan(guide, evidence, prior, parts, MostLooks, withOutlooks: false);
        Raw("{\"case\":"u8);
        Text(name);
        WriteCautions(guide, ranking);
        WriteCandidates(ranking);
        WriteForms(ranking);
        WriteLooks(",\"bestNextLooks\":["u8, plan.Now);
        WriteLooks(",\"worthWaitingFor\":["u8, plan.WorthWaitingFor);
        WriteTypicality(TypicalityFinder.Of(guide, evidence, prior, ranking.Candidates[0].Id)!);
        Raw(fragments.Guide);
    }

    private void WriteCautions(CompiledGuide guide, Ranking ranking)
    {
        Raw(",\"cautions\":["u8);
        var isFirst = true;
        foreach (var due in DueCaution.Of(guide.Guide, ranking))
        {
            if (!isFirst) Raw(","u8);
            isFirst = false;
            Raw(fragments.Caution(due.Caution.Id));
            Text(due.Candidate.Id);
            Raw("}"u8);
        }

        Raw("]"u8);
    }

    private void WriteCandidates(Ranking ranking)
    {
        Raw(",\"candidates\":["u8);
        for (var i = 0; i < ranking.Candidates.Count; i++)
        {
            var candidate = ranking.Candidates[i];
            if (i > 0) Raw(","u8);
            Raw(fragments.Candidate(candidate.Id));
            Number(candidate.Probability);
            Raw(",\"odds\":\""u8);
            Plain(candidate.Odds.ToString());
            Raw("\"}"u8);
        }

        Raw("]"u8);
    }

    private void WriteForms(Ranking ranking)
    {
        Raw(",\"forms\":["u8);
        var forms = ranking.FormsFrom(LeastForm);
        for (var i = 0; i < forms.Count; i++)
        {
            if (i > 0) Raw(","u8);
            Raw(fragments.Form(forms[i].Candidate, forms[i].Form));
            Number(forms[i].Probability);
            Raw("}"u8);
        }

        Raw("]"u8);
    }

    private void WriteLooks(ReadOnlySpan<byte> start, IReadOnlyList<NextLook> looks)
    {
        Raw(start);
        for (var i = 0; i < looks.Count; i++)
        {
            if (i > 0) Raw(","u8);
            Raw(fragments.Look(looks[i].Trait));
            Number(looks[i].Bits);
            Raw(",\"bitsPerEffort\":"u8);
            Number(looks[i].BitsPerEffort);
            Raw(looks[i].IsSecondLook ? ",\"secondLook\":true}"u8 : ",\"secondLook\":false}"u8);
        }

        Raw("]"u8);
    }

    private void WriteTypicality(Typicality typicality)
    {
        Raw(",\"typicality\":{\"candidate\":"u8);
        Text(typicality.Candidate);
        Raw(",\"tail\":"u8);
        Number(typicality.Tail);
        Raw(typicality.Word switch
        {
            TypicalityWord.Ordinary => ",\"word\":\"ordinary\",\"exact\":"u8,
            TypicalityWord.Unusual => ",\"word\":\"unusual\",\"exact\":"u8,
            _ => ",\"word\":\"very unusual\",\"exact\":"u8,
        });
        Raw(typicality.IsExact ? "true,\"ifWrong\":"u8 : "false,\"ifWrong\":"u8);
        Text(typicality.IfWrong);
        Raw("}"u8);
    }

    private void Raw(ReadOnlySpan<byte> utf8)
    {
        utf8.CopyTo(buffer.GetSpan(utf8.Length));
        buffer.Advance(utf8.Length);
    }

    private void Text(string? text) => Plain(JsonFragments.Text(text));

    private void Plain(string text) => buffer.Advance(Encoding.UTF8.GetBytes(text, buffer.GetSpan(Encoding.UTF8.GetMaxByteCount(text.Length))));

    /// <summary>Twelve digits behind the point: beyond them all is rounding, and whole numbers are written in a third of the time.</summary>
    private void Number(double value)
    {
        var (whole, rest) = Math.DivRem((ulong)Math.Round(value * 1e12), 1_000_000_000_000UL);
        var span = buffer.GetSpan(40);
        whole.TryFormat(span, out var written, default, CultureInfo.InvariantCulture);
        span[written++] = (byte)'.';
        for (var i = written + 11; i >= written; i--)
        {
            (rest, var digit) = Math.DivRem(rest, 10);
            span[i] = (byte)('0' + digit);
        }

        buffer.Advance(written + 12);
    }
}
