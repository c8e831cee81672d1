using System.Globalization;
using LibraryDesk.Desk.Words;
using LibraryDesk.Identification.Editing;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Web.Shared.Forms;

namespace LibraryDesk.Web.Features.GuideEditor.Basics;

/// <summary>What belongs to a guide as a whole, as its form posts it.</summary>
public sealed class WholeFields
{
    private static WordBook Say => BasicsText.Say;

    /// <summary>The draft's revision as the form showed it.</summary>
    public long Revision { get; set; }

    /// <summary>Everyday name of the crop.</summary>
    public string? Crop { get; set; }

    /// <summary>Its genus or genera.</summary>
    public string? Genus { get; set; }

    /// <summary>How reliable answers are.</summary>
    public ReliabilityFields Observer { get; set; } = new();

    /// <summary>Share of a form's frequencies taken from its whole species, in per cent.</summary>
    public string? Sharing { get; set; }

    /// <summary>Power the evidence is raised to.</summary>
    public string? Temper { get; set; }

    /// <summary>The form of what stands in the draft.</summary>
    public static WholeFields From(CropGuide guide, long revision) => new()
    {
        Revision = revision,
        Crop = guide.Crop,
        Genus = guide.Genus,
        Observer = ReliabilityFields.From(guide.Observer),
        Sharing = KindFields.Percent(guide.FormSharing),
        Temper = Shown(guide.Temper),
    };

    /// <summary>The change, or what must be put right first.</summary>
    public (PutWhole? Change, IReadOnlyList<FormFault> Faults) Read(CropGuide was)
    {
        var faults = new List<FormFault>();
        if (string.IsNullOrWhiteSpace(Crop)) faults.Add(new FormFault("crop", Say["Give the crop its everyday name."]));
        if (string.IsNullOrWhiteSpace(Genus)) faults.Add(new FormFault("genus", Say["Give the genus, or several with commas between."]));
        var observer = Observer.Read(was.Observer, faults);
        // Unchanged numbers keep all their decimals: what the form shows is rounded.
        var sharing = Sharing == KindFields.Percent(was.FormSharing) ? was.FormSharing : Number(Sharing) / 100;
        if (sharing is not (>= 0 and < 1)) faults.Add(new FormFault("sharing", Say["Give a number from 0 to below 100 per cent."]));
        var temper = Temper == Shown(was.Temper) ? was.Temper : Number(Temper);
        if (temper is not (> 0 and <= 1)) faults.Add(new FormFault("temper", Say["Give a number above 0 and at most 1."]));
        return faults.Count > 0 ? (null, faults) : (new PutWhole(Crop!.Trim(), Genus!.Trim(), observer, temper, sharing), []);
    }

    private static string Shown(double value) => Math.Round(value, 4).ToString(CultureInfo.InvariantCulture);

    private static double Number(string? text) =>
        double.TryParse(text?.Trim().Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : double.NaN;
}
