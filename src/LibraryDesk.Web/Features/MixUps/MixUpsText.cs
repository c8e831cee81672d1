using LibraryDesk.Desk.Words;

namespace LibraryDesk.Web.Features.MixUps;

/// <summary>The words of finding where a mix-up happened.</summary>
internal static class MixUpsText
{
    public static WordBook Say { get; } = new(typeof(MixUpsText));
}
