using LibraryDesk.Data.Seeds;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Search;

/// <summary>Finds by code, whole or its beginning. Lower case and missing hyphens are forgiven.</summary>
internal static class CodeSearch
{
    /// <summary>The beginning of a code as it is printed, such as "Q26-04" for "q2604"; null for what looks like no code.</summary>
    public static string? Beginning(string typed)
    {
        var plain = new string([.. typed.Where(character => !char.IsWhiteSpace(character) && character != '-').Select(char.ToUpperInvariant)]);
        if (plain.Length < 3 || plain.Length > 12 || !char.IsAsciiLetterUpper(plain[0]) || !plain.Skip(1).Take(2).All(char.IsAsciiDigit)) return null;
        var rest = plain[3..];
        var check = rest.Length > 0 && char.IsAsciiLetterUpper(rest[^1]) ? rest[^1..] : "";
        var number = rest[..^check.Length];
        if (!number.All(char.IsAsciiDigit) || (check.Length > 0 && number.Length < 3)) return null;
        return plain[..3] + (number.Length > 0 ? "-" + number : "") + (check.Length > 0 ? "-" + check : "");
    }

    /// <summary>Why a whole code cannot be one; null when it can, or is only the beginning of one.</summary>
    public static Refusal? WrongCode(string typed)
    {
        if (Beginning(typed) is not { } beginning || !char.IsAsciiLetterUpper(beginning[^1]) || beginning[0] is 'L') return null;
        return PacketCode.Read(typed).Refusal is { Code: "code.check" } no ? no : null;
    }

#pragma warning disable CA1309, CA1310 // Translated to the database's own comparison, which is letter by letter for these columns.
    public static IQueryable<LotRow> Lots(LibraryDbContext db, string from) =>
        db.Set<LotRow>().AsNoTracking().Where(row => row.Code.CompareTo(from) >= 0 && row.Code.CompareTo(from + "~") < 0 && !row.IsVoid).OrderBy(row => row.Code);

    public static IQueryable<PacketRow> Packets(LibraryDbContext db, string from) =>
        db.Set<PacketRow>().AsNoTracking().Where(row => row.Code.CompareTo(from) >= 0 && row.Code.CompareTo(from + "~") < 0 && row.Standing != PacketStanding.Void).OrderBy(row => row.Code);

    public static IQueryable<AccessionRow> Accessions(LibraryDbContext db, string from) =>
        db.Set<AccessionRow>().AsNoTracking().Where(row => row.Code.CompareTo(from) >= 0 && row.Code.CompareTo(from + "~") < 0 && !row.IsVoid).OrderBy(row => row.Code);
#pragma warning restore CA1309, CA1310
}
