using System.CommandLine;

namespace LibraryDesk.Cli.Guides;

/// <summary><c>desk guide</c>: what is done to guide files.</summary>
internal static class GuideVerb
{
    public static Command Create() => new("guide", "Check or learn crop guides.")
    {
        GuideValidateVerb.Create(),
        GuideLearnVerb.Create(),
        GuideFormsVerb.Create(),
    };
}
