using System.Globalization;
using LibraryDesk.Data.Settings;
using LibraryDesk.Desk.Growing;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Features.SeedLineage;
using static LibraryDesk.Web.Features.Labels.LabelsText;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>
/// The words of a label: the facts that seed-labelling rules usually ask for. Which of them are needed, and whether seed may be passed on
/// at all, is for local law; the label never says that it may.
/// </summary>
public static class LabelText
{
    /// <summary>The longest notice a label has room for; a longer one stands on the page that the code leads to.</summary>
    public const int LongestNotice = 110;

    private const int LongestCommon = 20;

    /// <summary>The variety, only where a claim stands and is not in doubt.</summary>
    public static string Variety(SeedLabel label) => label switch
    {
        { IsNameInDoubt: true } or { Name.Variety: null } => Say["Variety not stated"],
        { Name.OthersToo: true } => Say[$"‘{Quotes.Inside(label.Name.Variety)}’ and others"],
        _ => Quotes.Of(label.Name.Variety),
    };

    /// <summary>True when a variety stands on the label.</summary>
    public static bool HasVariety(SeedLabel label) => label is { IsNameInDoubt: false, Name.Variety: not null };

    /// <summary>What stands behind the scientific name: the everyday name, hybrid, blend.</summary>
    public static string AfterSpecies(SeedLabel label)
    {
        var common = label.Name.Species is { } species ? Common(species) : null;
        var words = new[] { common, label.IsHybrid && HasVariety(label) ? Say["F1 hybrid"] : null, label.Name.OthersToo ? Say["blend"] : null }.OfType<string>();
        return string.Join(", ", words);
    }

    public static string Harvest(SeedLabel label)
    {
        var years = label.Grown.HarvestYears;
        var harvest = years.Count == 0
            ? Say["harvest year not known"]
            : Say[$"harvest {string.Join(Say[" and "], years.Select(year => year.ToString(CultureInfo.InvariantCulture)))}"];
        return label.IsLot ? Say[$"Lot, {harvest}, {SeedWords.Seed(label.Seed)}"] : Say[$"Lot {label.LotCode}, {harvest}, {SeedWords.Seed(label.Seed)}"];
    }

    public static string Isolation(SeedLabel label)
    {
        var ways = label.Grown.Isolations;
        if (ways.Count == 0) return Say["How isolated: not known"];
        var words = string.Join("; ", ways.Select(Way));
        return label.Grown.NearestMetres is { } metres ? Say[$"Isolated: {words}, nearest {Measures.Metres(metres)}"] : Say[$"Isolated: {words}"];
    }

    /// <summary>Per cent, count, month and method, or that it was not tested.</summary>
    public static string Germination(SeedLabel label)
    {
        if (label.Tested is not { } test) return Say["Germination not tested"];
        var method = test.Replicates.Count == 1 ? Say["home test"] : Say[$"{test.Replicates.Count} replicates"];
        return Say[$"Germination {Percent(test):0} % ({test.Germinated} of {test.Sown}), {Dates.Month(test.ReadOn)}, {method}"];
    }

    /// <summary>True when the last test is under a legal minimum that the growing figures list for the species. Wording and 8 point type: 7 CFR 201.29.</summary>
    public static bool IsBelowStandard(SeedLabel label) =>
        label is { Tested: { } test, Name.Species: { } species }
        && GrowingFacts.For(species, "label_germination_percent") is { } minimum
        && minimum.Facts.Any(fact => fact.Low is { } low && Percent(test) < low);

    public static string Treatment(bool saysUntreated) => Say[saysUntreated ? "Seed not treated" : "Treatment not stated"];

    /// <summary>The library, its notice where there is room, and the word on local law.</summary>
    public static string Library(LibrarySettingsRow settings)
    {
        var place = settings.Tagline.Length is > 0 and <= 40 ? $"{settings.Name}, {settings.Tagline}" : settings.Name;
        var notice = settings.SharingNotice.Trim();
        if (notice.Length == 0) return Say[$"{place}. Check local law before passing it on."];
        return notice.Length <= LongestNotice ? $"{place}. {notice}" : Say[$"{place}. Notice: scan the code. Check local law before passing it on."];
    }

    /// <summary>Where the code leads: the address in the settings, else the one the page was asked for under.</summary>
    public static string Address(SeedLabel label, LibrarySettingsRow settings, string requestAddress)
    {
        var desk = settings.PublicAddress.Length > 0 ? settings.PublicAddress : requestAddress;
        return $"{desk.TrimEnd('/')}/{(label.IsLot ? "lots" : "p")}/{label.Code}";
    }

    // The species' own everyday name where it is short, else the crop's: the line must not run over.
    private static string? Common(string species) =>
        SpeciesNames.CommonOf(species) is { Length: <= LongestCommon } own ? own : SpeciesNames.CropOf(species)?.ToLowerInvariant();

    private static double Percent(GerminationTest test) => test.Sown == 0 ? 0 : 100.0 * test.Germinated / test.Sown;

    private static string Way(Isolation way) => way switch
    {
        Lineage.Acts.Isolation.Open => Say["open"],
        Lineage.Acts.Isolation.Distance => Say["distance"],
        Lineage.Acts.Isolation.Bagged => Say["bagged"],
        Lineage.Acts.Isolation.Caged => Say["caged"],
        Lineage.Acts.Isolation.HandPollinated => Say["hand-pollinated"],
        _ => Say["by time of flowering"],
    };
}
