using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Shared.Forms;

namespace LibraryDesk.Web.Features.GuideEditor.Basics;

/// <summary>How reliable answers are taken to be, as a form posts it: three shares in per cent, or none of them.</summary>
public sealed class ReliabilityFields
{
    private static WordBook Say => BasicsText.Say;

    /// <summary>Per cent of answers given as sure that name what was there.</summary>
    public string? Sure { get; set; }

    /// <summary>The same of those given as fairly sure.</summary>
    public string? Fairly { get; set; }

    /// <summary>The same of faint ones.</summary>
    public string? Faint { get; set; }

    /// <summary>The fields of what stands in the draft; empty for null.</summary>
    public static ReliabilityFields From(ObserverReliability? observer) => observer is null ? new ReliabilityFields() : new ReliabilityFields
    {
        Sure = KindFields.Percent(observer.Sure),
        Fairly = KindFields.Percent(observer.Fairly),
        Faint = KindFields.Percent(observer.Faint),
    };

    /// <summary>The values; null where all three are left empty, or where there is a fault.</summary>
    /// <param name="was">As they stand; null where there are none.</param>
    public ObserverReliability? Read(ObserverReliability? was, List<FormFault> faults)
    {
        string?[] all = [Sure, Fairly, Faint];
        if (all.All(string.IsNullOrWhiteSpace)) return null;
        // Unchanged fields keep all their decimals: what the form shows is rounded.
        var shown = From(was);
        if (was is not null && (Sure, Fairly, Faint) == (shown.Sure, shown.Fairly, shown.Faint)) return was;
        var before = faults.Count;
        var read = new ObserverReliability(Fraction(Sure, "sure", faults), Fraction(Fairly, "fairly", faults), Fraction(Faint, "faint", faults));
        return faults.Count == before ? read : null;
    }

    private static double Fraction(string? text, string field, List<FormFault> faults)
    {
        if (KindFields.TryFraction(text, out var share)) return share;
        faults.Add(new FormFault(field, Say["Give all three as numbers above 0 and at most 100 per cent, or leave all three empty."]));
        return 0;
    }
}
