using System.Globalization;
using System.Text.Json;
using LibraryDesk.Desk.Cases.Filing;

namespace LibraryDesk.Desk.Demo;

/// <summary>Reads the answers of a demo step: a state, a list of states, a number, a range, or one of the two that are no answer.</summary>
internal static class DemoAnswers
{
    private const string NotSure = "not sure";
    private const string CantSeeYet = "can't see it yet";

    public static IEnumerable<GivenAnswer> Of(DemoStep step) =>
        step.Find("answers") is { } answers ? answers.EnumerateObject().Select(answer => Of(answer.Name, answer.Value)) : [];

    private static GivenAnswer Of(string trait, JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => Of(trait, value.GetProperty("is")) with { Sureness = value.GetProperty("sure").GetString()! },
        JsonValueKind.Array => GivenAnswer.Of(trait, [.. value.EnumerateArray().Select(state => state.GetString()!)]),
        JsonValueKind.Number => GivenAnswer.Measured(trait, value.GetDouble()),
        _ => Text(trait, value.GetString()!),
    };

    private static GivenAnswer Text(string trait, string text)
    {
        if (text == NotSure) return GivenAnswer.NotSure(trait);
        if (text == CantSeeYet) return GivenAnswer.CantSeeYet(trait);
        if (text.Split("..") is [var low, var high]) return GivenAnswer.Measured(trait, Number(low), Number(high));
        return GivenAnswer.Of(trait, text);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
