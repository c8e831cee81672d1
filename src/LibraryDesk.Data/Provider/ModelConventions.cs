using System.Text;
using LibraryDesk.Data.Search;
using LibraryDesk.Data.Seeds;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace LibraryDesk.Data.Provider;

/// <summary>Conventions that hold for every table, whichever database it stands in.</summary>
internal static class ModelConventions
{
    private static readonly ValueConverter<DateTimeOffset, long> Ticks = new(
        instant => instant.UtcTicks, ticks => new DateTimeOffset(ticks, TimeSpan.Zero));

    /// <summary>SQLite can neither compare nor order instants, so for SQLite alone they are stored as UTC ticks.</summary>
    public static void StoreInstantsAsTicks(this ModelBuilder builder)
    {
        foreach (var property in builder.Model.GetEntityTypes().SelectMany(entity => entity.GetProperties()))
        {
            if (property.ClrType == typeof(DateTimeOffset) || property.ClrType == typeof(DateTimeOffset?))
                property.SetValueConverter(Ticks);
        }
    }

    /// <summary>
    /// Codes and search words are compared letter by letter, as SQLite does anyway, so that the start of one is found by its index
    /// whatever language the server sorts by.
    /// </summary>
    public static void CompareWordsByLetter(this ModelBuilder builder)
    {
        foreach (var (entity, property) in ByLetter) builder.Entity(entity).Property<string>(property).UseCollation("C");
    }

    private static readonly (Type Entity, string Property)[] ByLetter =
    [
        (typeof(AccessionRow), nameof(AccessionRow.Code)), (typeof(LotRow), nameof(LotRow.Code)), (typeof(PacketRow), nameof(PacketRow.Code)),
        (typeof(SearchPostingRow), nameof(SearchPostingRow.Word)), (typeof(SearchTrigramRow), nameof(SearchTrigramRow.Trigram)), (typeof(SearchTrigramRow), nameof(SearchTrigramRow.Word)),
    ];

    /// <summary>snake_case columns, so that SQL written by hand needs no quotes on either database.</summary>
    public static void UseSnakeNames(this ModelBuilder builder)
    {
        foreach (var entity in builder.Model.GetEntityTypes())
        {
            if (entity.GetTableName() is { } table) entity.SetTableName(Snake(table));
            if (entity.IsMappedToJson()) continue;
            foreach (var property in entity.GetProperties()) property.SetColumnName(Snake(property.Name));
        }
    }

    private static string Snake(string name)
    {
        var text = new StringBuilder(name.Length + 8);
        for (var i = 0; i < name.Length; i++)
        {
            if (char.IsUpper(name[i]) && i > 0 && name[i - 1] != '_' && !char.IsUpper(name[i - 1])) text.Append('_');
            text.Append(char.ToLowerInvariant(name[i]));
        }
        return text.ToString();
    }
}
