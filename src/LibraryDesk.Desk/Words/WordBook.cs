using System.Collections.Concurrent;
using System.Globalization;
using System.Resources;

namespace LibraryDesk.Desk.Words;

/// <summary>
/// The words of one feature. The English sentence stands in the code and is its own key; other languages stand in resource files beside the
/// feature, named after <paramref name="feature"/>. A sentence without a translation stays English, so nothing is ever blank.
/// </summary>
/// <param name="feature">The class whose name the resource files carry, such as <c>AccountText.es.resx</c>.</param>
public sealed class WordBook(Type feature)
{
    private readonly ResourceManager _files = new(feature);
    private readonly ConcurrentDictionary<CultureInfo, ResourceSet?> _sets = new();

    /// <summary>The sentence in the reader's language.</summary>
    public string this[string english] => PatternOf(english);

    /// <summary>The sentence in the reader's language, its values written as that language writes them.</summary>
    public string this[Sentence sentence] =>
        sentence.By(PatternOf(sentence.Pattern), CultureInfo.CurrentCulture, inner => this[inner]);

    /// <summary>A refusal in the reader's language.</summary>
    public string this[Refusal refusal] => refusal.Sentence is { } sentence ? this[sentence] : this[refusal.Message];

    /// <summary>
    /// The sentence for a number of things. English and Spanish have one form for exactly one and one for the rest (Unicode CLDR, plural
    /// rules, categories one and other); a language with more forms needs more here.
    /// </summary>
    public string Count(long number, Sentence one, Sentence other) => this[number == 1 ? one : other];

    /// <inheritdoc cref="Count(long, Sentence, Sentence)"/>
    public string Count(long number, string one, Sentence other) => number == 1 ? this[one] : this[other];

    /// <summary>The pattern of a sentence in the reader's language, its values still as <c>{0}</c>.</summary>
    public string PatternOf(string english)
    {
        for (var culture = CultureInfo.CurrentUICulture; culture.Name.Length > 0; culture = culture.Parent)
        {
            var set = _sets.GetOrAdd(culture, c => _files.GetResourceSet(c, createIfNotExists: true, tryParents: false));
            if (set?.GetString(english) is { } found) return found;
        }
        return english;
    }
}
