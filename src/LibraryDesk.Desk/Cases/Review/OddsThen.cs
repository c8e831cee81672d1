using System.Text.Json;
using System.Text.Json.Serialization;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Desk.Cases.Review;

/// <summary>The ranking at the moment of a determination, as its record keeps it.</summary>
/// <param name="Candidates">Likeliest first; probabilities 0 to 1.</param>
public sealed record OddsThen(string Guide, string Version, IReadOnlyList<OddsThen.Entry> Candidates)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    public static OddsThen Of(Ranking ranking)
    {
        ArgumentNullException.ThrowIfNull(ranking);
        return new OddsThen(
            ranking.GuideId,
            ranking.GuideVersion,
            [.. ranking.Candidates.Select(c => new Entry(c.Id, c.Name, c.Probability, c.Odds.Seeds, c.Odds.ToString()))]);
    }

    public static OddsThen? FromJson(string json) => JsonSerializer.Deserialize<OddsThen>(json, Json);

    public string ToJson() => JsonSerializer.Serialize(this, Json);

    /// <summary>One candidate as it stood then.</summary>
    /// <param name="Seeds">Of twenty.</param>
    /// <param name="InWords">As the page said it.</param>
    public sealed record Entry(string Id, string Name, double Probability, int Seeds, string InWords)
    {
        /// <summary>True where twenty seeds would have been due; told by the English words alone, which the record keeps.</summary>
        public bool IsMoreThanNineteen => InWords == "more than 19 in 20";
    }
}
