using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Cli.Identify;

/// <summary>
/// The parts of a line that are the same in every case, as JSON text made once: a batch writes the same names a hundred thousand times.
/// </summary>
internal sealed class JsonFragments
{
    private readonly Dictionary<string, byte[]> _candidates;
    private readonly Dictionary<(string, string?), byte[]> _forms = [];
    private readonly Dictionary<string, byte[]> _looks;
    private readonly Dictionary<string, byte[]> _cautions;

    public JsonFragments(CropGuide guide)
    {
        _candidates = guide.Candidates.ToDictionary(c => c.Id, c => Utf8($"{{\"id\":{Text(c.Id)},\"name\":{Text(c.Name)},\"probability\":"));
        foreach (var c in guide.Candidates)
        {
            if (c.Forms.Count == 0) _forms[(c.Id, null)] = FormOf(c.Id, null, c.Name);
            foreach (var f in c.Forms) _forms[(c.Id, f.Id)] = FormOf(c.Id, f.Id, f.Name);
        }

        _looks = guide.Traits.ToDictionary(t => t.Id, t => Utf8($"{{\"trait\":{Text(t.Id)},\"question\":{Text(t.Question)},\"part\":{Text(t.Part)},\"bits\":"));
        _cautions = guide.Cautions.ToDictionary(c => c.Id, c => Utf8($"{{\"id\":{Text(c.Id)},\"title\":{Text(c.Title)},\"text\":{Text(c.Text)},\"candidate\":"));
        Guide = Utf8($",\"guide\":{{\"id\":{Text(guide.Id)},\"version\":{Text(guide.Version)}}}}}\n");
    }

    /// <summary>The end of every line: which guide was used.</summary>
    public byte[] Guide { get; }

    /// <summary>A candidate up to its probability.</summary>
    public byte[] Candidate(string id) => _candidates[id];

    /// <summary>A form up to its probability.</summary>
    public byte[] Form(string candidate, string? form) => _forms[(candidate, form)];

    /// <summary>A look up to its bits.</summary>
    public byte[] Look(string trait) => _looks[trait];

    /// <summary>A caution up to the candidate it is about.</summary>
    public byte[] Caution(string id) => _cautions[id];

    /// <summary>A text as JSON, in quotes.</summary>
    public static string Text(string? text) => text is null ? "null" : "\"" + JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping) + "\"";

    private static byte[] FormOf(string candidate, string? form, string name) =>
        Utf8($"{{\"candidate\":{Text(candidate)},\"form\":{Text(form)},\"name\":{Text(name)},\"probability\":");

    private static byte[] Utf8(string text) => Encoding.UTF8.GetBytes(text);
}
