using LibraryDesk.Data.Notices;
using LibraryDesk.Web.Shared.Forms;
using LibraryDesk.Web.Shared.Marks;
using static LibraryDesk.Web.Features.Notices.NoticesText;

namespace LibraryDesk.Web.Features.Notices;

/// <summary>What the notices' kinds and ways are called.</summary>
internal static class NoticeWords
{
    public static IReadOnlyList<Choice> Ways =>
    [
        new(nameof(NoticeWay.InApp), Say["In the app"]),
        new(nameof(NoticeWay.Email), Say["By e-mail"]),
        new(nameof(NoticeWay.Both), Say["Both"]),
        new(nameof(NoticeWay.Off), Say["Not at all"]),
    ];

    public static string Name(NoticeKind kind) => kind switch
    {
        NoticeKind.Season => Say["When my plant should flower or ripen"],
        NoticeKind.LookAsked => Say["When a volunteer asks for a look"],
        NoticeKind.Decided => Say["When my case is determined or opened again"],
        _ => Say["When seed I have or had is called back"],
    };

    public static string Hint(NoticeKind kind) => kind switch
    {
        NoticeKind.Season => Say["Reckoned from your last look and the figures for that kind of plant, and only when a look would tell more then."],
        NoticeKind.LookAsked => Say["What the volunteer would like to know, in their words."],
        NoticeKind.Decided => Say["Which species, and on what grounds."],
        _ => Say["A recall stands on the packet’s page too, whatever you choose here."],
    };

    public static IconName Sign(NoticeKind kind) => kind switch
    {
        NoticeKind.Season => IconName.Leaf,
        NoticeKind.LookAsked => IconName.Eye,
        NoticeKind.Decided => IconName.Tick,
        _ => IconName.Warning,
    };
}
