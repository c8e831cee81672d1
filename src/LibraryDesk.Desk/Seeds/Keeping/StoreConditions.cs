using System.Globalization;
using System.Text.RegularExpressions;
using LibraryDesk.Lineage.Keeping;

namespace LibraryDesk.Desk.Seeds.Keeping;

/// <summary>How one store is kept.</summary>
/// <param name="Name">How the places in it begin, such as "Freezer".</param>
/// <param name="Kept">Seed moisture and temperature.</param>
public sealed record Store(string Name, StorageConditions Kept);

/// <summary>The library's stores.</summary>
public sealed record Stores(IReadOnlyList<Store> All);

/// <summary>Reads how the library's stores are kept, and which store a lot is in.</summary>
public static partial class StoreConditions
{
    public const string ShapeCode = "settings.stores";

    // No source: seed wetter than this rots or sprouts, and no store is colder than the vapour of liquid nitrogen or warmer than a hot attic.
    private const int MostMoisture = 40;
    private const int Coldest = -196;
    private const int Warmest = 60;

    /// <summary>Nobody measured.</summary>
    public static StorageConditions NotKnown { get; } = new(null, null);

    /// <summary>Reads the stores, one a line, such as "Freezer: 5 %, -18".</summary>
    public static Outcome<Stores> Read(string? text)
    {
        var stores = new List<Store>();
        foreach (var line in (text ?? "").Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (Line().Match(line) is not { Success: true } match) return new Refusal(ShapeCode, $"\"{line}\" cannot be read. Write a store as in \"Freezer: 5 %, -18\": its name, the seed moisture and the degrees Celsius.");
            if (Number(match.Groups["moisture"]) > MostMoisture || Number(match.Groups["celsius"]) is < Coldest or > Warmest)
                return new Refusal(ShapeCode, $"\"{line}\" looks like a slip: seed is kept at 0 to {MostMoisture} % moisture and at {Coldest} to {Warmest} °C. Check both figures.");
            stores.Add(new(match.Groups["name"].Value.Trim(), new(Number(match.Groups["moisture"]), Number(match.Groups["celsius"]))));
        }

        return new Stores(stores);
    }

    /// <summary>The conditions of a place: of the store whose name it begins with, the longest such; <see cref="NotKnown"/> without one.</summary>
    public static StorageConditions For(string? stores, string? place) =>
        place is null ? NotKnown : Read(stores).Match(
            read => read.All.Where(store => place.StartsWith(store.Name, StringComparison.OrdinalIgnoreCase)).MaxBy(store => store.Name.Length)?.Kept ?? NotKnown,
            _ => NotKnown);

    private static double Number(Group group) => double.Parse(group.Value.Replace(',', '.'), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<name>[^:]+):\s*(?<moisture>\d+([.,]\d+)?)\s*%\s*[,;]?\s*(?<celsius>-?\d+([.,]\d+)?)\s*(°?\s*C)?$")]
    private static partial Regex Line();
}
