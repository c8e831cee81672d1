using System.Globalization;
using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Filing;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.Queue;

/// <summary>A taxon as the rows of radios and the list beside them post it.</summary>
public class TaxonFields
{
    /// <summary>The radio that opens the list of other candidates.</summary>
    public const string Another = "another";

    public string? Taxon { get; set; }
    public string? Other { get; set; }
    public string? Qualifier { get; set; }
    public string? Note { get; set; }

    public NamedTaxon Named => new((Taxon == Another ? Other : Taxon) ?? "", Qualifier ?? Qualifiers.None);
}

/// <summary>The opinion to be sealed.</summary>
public sealed class OpinionFields : TaxonFields
{
    public string? InTwenty { get; set; }

    public OpinionWritten Written => new(Named, Whole(InTwenty), Note);

    // What is not a whole number is refused by the act as out of range, and stays in the box.
    private static int? Whole(string? text) =>
        string.IsNullOrWhiteSpace(text) ? null
        : int.TryParse(text, NumberStyles.Integer, CultureInfo.InvariantCulture, out var number) ? number : -1;
}

/// <summary>The end of a review.</summary>
public sealed class FinishFields : TaxonFields
{
    public long Revision { get; set; }
}

/// <summary>A librarian's own determination.</summary>
public sealed class AloneFields : TaxonFields
{
    public string? Variety { get; set; }
    public string? PacketCode { get; set; }
    public bool IsSure { get; set; }

    public DeterminationAlone Asked => new(Named, Variety, PacketCode, Note, IsSure);
}

/// <summary>A score of one trait; its states come as boxes of one name.</summary>
public sealed class ScoreFields
{
    public string? TraitId { get; set; }
    public long LookId { get; set; }
    public string? Low { get; set; }
    public string? High { get; set; }
    public string? Sureness { get; set; }
    /// <summary>The answer contested; null for none.</summary>
    public long? Contests { get; set; }

    public GivenAnswer Given(bool measured, string? unit, IReadOnlyList<string> states) => measured
        ? new GivenAnswer(TraitId ?? "", AnswerKind.Measure, [], Number(Low, unit), Number(High, unit), Sureness ?? "sure")
        : new GivenAnswer(TraitId ?? "", AnswerKind.States, states, Sureness: Sureness ?? "sure");

    private static double? Number(string? text, string? unit) =>
        string.IsNullOrWhiteSpace(text) ? null : Measures.TryRead(text, unit, out var number) ? number : double.NaN;
}

/// <summary>A suggestion.</summary>
public sealed class SuggestionFields
{
    public string? Taxon { get; set; }
    public string? Variety { get; set; }
    public string? Reason { get; set; }
}

/// <summary>A look to be asked for.</summary>
public sealed class LookFields
{
    /// <summary>A trait as <c>t:id</c> or a part as <c>p:id</c>; empty for the message alone.</summary>
    public string? What { get; set; }
    public string? Message { get; set; }

    public LookWanted Wanted => new(
        What?.StartsWith("t:", StringComparison.Ordinal) == true ? What[2..] : null,
        What?.StartsWith("p:", StringComparison.Ordinal) == true ? What[2..] : null,
        Message);
}
