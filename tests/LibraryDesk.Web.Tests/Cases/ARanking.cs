using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Odds;
using LibraryDesk.Desk.Cases.Reading;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Web.Tests.Cases;

/// <summary>Rankings and cases for the parts to show, reckoned by the pepper guide itself.</summary>
internal static class ARanking
{
    public static CompiledGuide Peppers { get; } = CompiledGuide.Compile(BuiltInGuides.Open("capsicum")!.Guide!);

    public static CaseRanking Of(params (string Trait, string State)[] answers) =>
        RankCase.Rank(1, Peppers, Rows(answers), new HashSet<string> { "leaves", "flowers" }, CaseOrigin.None);

    public static CaseView Case(bool mayChange, Specimen specimen, params (string Trait, string State)[] answers)
    {
        var ranking = Of(answers);
        var look = new LookRow { Id = 1, CaseId = 1, Number = 1, Date = new DateOnly(2026, 7, 28), Parts = "leaves,flowers" };
        var row = new CaseRow
        {
            Id = 1, Title = "Pepper", GuideId = "capsicum", GuideVersion = Peppers.Guide.Version, State = CaseState.Open, Specimen = specimen, FiledAt = DateTimeOffset.UnixEpoch,
        };
        var before = Of();
        return new CaseView(row, Peppers, mayChange, ranking, [new LookView(look, ranking.Parts, Rows(answers), [], before, ranking)], [], [], null, 0, 2, 1);
    }

    private static List<AnswerRow> Rows((string Trait, string State)[] answers) =>
        [.. answers.Select((a, i) => new AnswerRow { Id = i + 1, CaseId = 1, LookId = 1, TraitId = a.Trait, Kind = AnswerKind.States, States = a.State })];
}
