namespace LibraryDesk.Data;

/// <summary>A row that people edit. The revision is a concurrency token raised on every save: SQLite has no generated one.</summary>
public interface IRevisioned
{
    /// <summary>Raised by one at each save; a form posts the revision it showed.</summary>
    long Revision { get; set; }
}
