namespace LibraryDesk.Data.Cases;

/// <summary>What a case was filed with. What grows can be looked at again later; a fruit or seeds alone cannot.</summary>
public enum Specimen
{
    Plant,
    FruitAlone,
    SeedsAlone,
    /// <summary>One of several seedlings filed together.</summary>
    Seedling,
}
