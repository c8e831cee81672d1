using LibraryDesk.Data.Cases;

namespace LibraryDesk.Desk.Cases;

/// <summary>The words of a case's history, and the way they are written: in the same save as the change.</summary>
public static class CaseEvents
{
    public const string Started = "started";
    public const string Filed = "filed";
    public const string PartsSet = "parts-set";
    public const string Answered = "answered";
    public const string AnswerTakenBack = "answer-taken-back";
    public const string PhotoAdded = "photo-added";
    public const string PhotoRemoved = "photo-removed";
    public const string PhotoRestored = "photo-restored";
    public const string OriginAdded = "origin-added";
    public const string OriginTakenBack = "origin-taken-back";
    public const string LookAdded = "look-added";
    public const string Withdrawn = "withdrawn";
    public const string Renamed = "renamed";

    public static void AddCaseEvent(this LibraryDbContext db, long caseId, string kind, Actor actor, DateTimeOffset at, string? detail = null)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(actor);
        db.Add(new CaseEventRow { CaseId = caseId, Kind = kind, ById = actor.UserId, Detail = detail, At = at });
    }
}
