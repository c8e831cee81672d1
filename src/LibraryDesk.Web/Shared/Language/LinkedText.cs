using System.Globalization;
using System.Text.RegularExpressions;
using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage;
using LibraryDesk.Web.Shared.Layout;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace LibraryDesk.Web.Shared.Language;

/// <summary>Draws sentences that have links, strong words or other parts inside them, so that a translation can move them.</summary>
public static partial class LinkedText
{
    /// <summary>
    /// The sentence in the reader's language, with <c>[words](address)</c> drawn as a link, <c>**words**</c> drawn strong and <c>`words`</c> as a code. Words and
    /// addresses are encoded, and an address leads into the desk, never out of it. A value that is a <see cref="RenderFragment"/> is drawn in
    /// its place, outside links and strong words only.
    /// </summary>
    public static RenderFragment Linked(this WordBook words, Sentence sentence) =>
        Draw(words.PatternOf(sentence.Pattern), part => sentence.By(part, CultureInfo.CurrentCulture), sentence.Values);

    /// <inheritdoc cref="Linked(WordBook, Sentence)"/>
    public static RenderFragment Linked(this WordBook words, string sentence) => Draw(words[sentence], part => part, []);

    // The marks are looked for in the pattern alone: a value that somebody typed never becomes a link.
    private static RenderFragment Draw(string pattern, Func<string, string> filled, IReadOnlyList<object?> values) => builder =>
    {
        var at = 0;
        foreach (Match mark in Marks().Matches(pattern))
        {
            DrawPlain(builder, pattern[at..mark.Index], filled, values);
            at = mark.Index + mark.Length;
            var words = mark.Groups["link"].Success ? "link" : mark.Groups["strong"].Success ? "strong" : "code";
            builder.OpenElement(1, words switch { "link" => "a", "strong" => "b", _ => "span" });
            if (words == "code") builder.AddAttribute(2, "class", "code");
            if (words == "link") builder.AddAttribute(3, "href", AddressOf(filled(mark.Groups["to"].Value)));
            builder.AddContent(4, filled(mark.Groups[words].Value));
            builder.CloseElement();
        }
        DrawPlain(builder, pattern[at..], filled, values);
    };

    private static string AddressOf(string address) => address.StartsWith('#') ? address : LocalAddress.OrHome(address);

    private static void DrawPlain(RenderTreeBuilder builder, string pattern, Func<string, string> filled, IReadOnlyList<object?> values)
    {
        var at = 0;
        foreach (Match hole in Holes().Matches(pattern))
        {
            if (values.ElementAtOrDefault(int.Parse(hole.ValueSpan[1..^1], CultureInfo.InvariantCulture)) is not RenderFragment fragment) continue;
            builder.AddContent(0, filled(pattern[at..hole.Index]));
            builder.AddContent(5, fragment);
            at = hole.Index + hole.Length;
        }
        builder.AddContent(6, filled(pattern[at..]));
    }

    [GeneratedRegex(@"\{\d+\}")]
    private static partial Regex Holes();

    [GeneratedRegex(@"\*\*(?<strong>[^*]+)\*\*|`(?<code>[^`]+)`|\[(?<link>[^\]]+)\]\((?<to>[^)]+)\)")]
    private static partial Regex Marks();
}
