using System.Globalization;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Learning;
using LibraryDesk.Web.Shared.Forms;
using static LibraryDesk.Web.Features.GuideEditor.GuideEditorText;

namespace LibraryDesk.Web.Features.GuideEditor;

/// <summary>A candidate as its form posts it; its forms have forms of their own.</summary>
public sealed class KindFields
{
    /// <summary>The draft's revision as the form showed it.</summary>
    public long Revision { get; set; }
    /// <summary>Its name.</summary>
    public string? Name { get; set; }
    /// <summary>Everyday name.</summary>
    public string? Common { get; set; }
    /// <summary>What kind it is; only asked for a new one.</summary>
    public CandidateKind Kind { get; set; }
    /// <summary>True for plants grown from seed that people keep.</summary>
    public bool Grown { get; set; }

    /// <summary>Per cent of the plants brought to a desk.</summary>
    public string? Share { get; set; }
    /// <summary>What the share rests on.</summary>
    public string? ShareBasis { get; set; }
    /// <summary>Two or three plain sentences.</summary>
    public string? Card { get; set; }
    /// <summary>Ids of its cautions.</summary>
    public List<string>? Cautions { get; set; }
    /// <summary>Ids of the sources of the card.</summary>
    public List<string>? Sources { get; set; }

    /// <summary>The form of what stands in the draft.</summary>
    public static KindFields From(Candidate? candidate, long revision) => candidate is null ? new KindFields { Revision = revision } : new KindFields
    {
        Revision = revision,
        Name = candidate.Name,
        Common = candidate.Common,
        Kind = candidate.Kind,
        Grown = candidate.Domesticated,
        Share = Percent(candidate.Prior),
        ShareBasis = candidate.PriorBasis,
        Card = candidate.Card,
        Cautions = [.. candidate.Cautions],
        Sources = [.. candidate.Sources],
    };

    /// <summary>The candidate, or what must be put right first.</summary>
    /// <param name="was">As it stands; null for a new one.</param>
    public (Candidate? Candidate, IReadOnlyList<FormFault> Faults) Read(Candidate? was, CropGuide guide)
    {
        var faults = new List<FormFault>();
        var id = was?.Id ?? (string.IsNullOrWhiteSpace(Name) ? "" : GuideLearner.IdOf(Name));
        if (string.IsNullOrWhiteSpace(Name)) faults.Add(new FormFault("name", Say["Give the kind its scientific name."]));
        else if (was is null && guide.FindCandidate(id) is not null) faults.Add(new FormFault("name", Say["The guide has this kind already."]));
        // An unchanged share keeps all its decimals: what the form shows is rounded.
        var share = was is not null && Share == Percent(was.Prior) ? was.Prior : Fraction(Share, "share", faults);
        if ((was?.Kind ?? Kind) == CandidateKind.LookAlike && Cautions is not { Count: > 0 }) faults.Add(new FormFault("cautions", Say["A look-alike needs a caution: say what to do if it is one."]));
        if (faults.Count > 0) return (null, faults);
        return (new Candidate(
            id, Name!.Trim(), Blank(Common), was?.Kind ?? Kind, Grown, share, Blank(ShareBasis), [.. Cautions ?? []], Blank(Card), [.. Sources ?? []],
            was?.Profiles ?? [], was?.Forms ?? []), []);
    }

    internal static double Fraction(string? text, string field, List<FormFault> faults)
    {
        if (TryFraction(text, out var share)) return share;
        faults.Add(new FormFault(field, Say["Give the share as a number above 0 and at most 100 per cent."]));
        return 0;
    }

    /// <summary>Reads a share above 0 and at most 100 per cent.</summary>
    internal static bool TryFraction(string? text, out double share)
    {
        var isNumber = double.TryParse(text?.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var percent);
        share = percent / 100;
        return isNumber && percent is > 0 and <= 100;
    }

    internal static string Percent(double share) => Math.Round(share * 100, 4).ToString(CultureInfo.InvariantCulture);

    internal static string? Blank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
