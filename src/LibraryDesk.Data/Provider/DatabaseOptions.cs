using System.ComponentModel.DataAnnotations;

namespace LibraryDesk.Data.Provider;

/// <summary>The section <c>Database</c> of the configuration.</summary>
public sealed class DatabaseOptions
{
    /// <summary>The section's name.</summary>
    public const string Section = "Database";

    /// <summary><c>sqlite</c> (embedded, the default) or <c>postgres</c>.</summary>
    [Required]
    public string Provider { get; set; } = "sqlite";

    /// <summary>Connection string of that provider. For SQLite usually <c>Data Source=app-data/library.db</c>.</summary>
    [Required]
    public string ConnectionString { get; set; } = "Data Source=app-data/library.db";
}
