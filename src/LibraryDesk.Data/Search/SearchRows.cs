namespace LibraryDesk.Data.Search;

/// <summary>One name that lots go by: a species and a variety, as search finds it. Lots point to it, so that a name's words stand once however many lots bear it.</summary>
public sealed class SearchNameRow
{
    /// <summary>Handed out in .NET under the ledger lock.</summary>
    public long Id { get; set; }
    /// <summary>The guide's id; empty when not known.</summary>
    public required string Species { get; set; }
    /// <summary>Upper case and trimmed; empty for a species alone.</summary>
    public required string NormalizedName { get; set; }
    /// <summary>The variety as written; empty for none.</summary>
    public required string Display { get; set; }
}

/// <summary>The name and the season of a lot.</summary>
public sealed class SearchLotRow
{
    public long LotId { get; set; }
    public long NameId { get; set; }
    /// <summary>The year its seed ripened, or it was made.</summary>
    public int Year { get; set; }
}

/// <summary>A word, and where it stands.</summary>
public sealed class SearchPostingRow
{
    /// <summary>Lower case, without accents.</summary>
    public required string Word { get; set; }
    /// <summary>N for a name, D for the donor of an accession.</summary>
    public required string Kind { get; set; }
    /// <summary>The name's number, or the accession's.</summary>
    public long Ref { get; set; }
    /// <summary>How much it counts: 4 for the name itself, 3 for another name, 2 for the species, 1 for a trait.</summary>
    public int Weight { get; set; }
}

/// <summary>Three letters in a row of a word that is in use; so words are found that were spelled a little otherwise.</summary>
public sealed class SearchTrigramRow
{
    public required string Trigram { get; set; }
    public required string Word { get; set; }
}
