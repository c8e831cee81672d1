namespace LibraryDesk.Web.Shared.Odds;

/// <summary>How much one piece of evidence weighs, in strokes of a tally.</summary>
public enum TallyWeight
{
    Slight = 1,
    Some = 2,
    Strong = 3,
    Decides = 5,
}
