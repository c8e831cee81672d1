using LibraryDesk.Data.Seeds;
using LibraryDesk.Desk.Seeds;
using LibraryDesk.Desk.Varieties;

namespace LibraryDesk.Web.Features.Varieties;

/// <summary>A variety record as its form posts it.</summary>
public sealed class VarietyForm
{
    public long? Revision { get; set; }
    public string? Name { get; set; }
    public BreedingStatus Breeding { get; set; }
    public string? Synonyms { get; set; }
    public string? Description { get; set; }
    public string? Source { get; set; }
    public List<string> Traits { get; set; } = [];

    public static VarietyForm From(VarietyView view) => new()
    {
        Revision = view.Row.Revision,
        Name = view.Row.Name,
        Breeding = view.Row.Breeding,
        Synonyms = string.Join('\n', view.Synonyms),
        Description = view.Row.Description,
        Source = view.Row.Source,
        Traits = [.. view.Traits.Select(pair => $"{pair.Trait}={pair.State}")],
    };

    /// <summary>As the act takes it.</summary>
    public VarietyDescription For(string? species) => new(
        Name, species, Breeding,
        (Synonyms ?? "").Split(['\n', '\r'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries),
        Description,
        [.. Traits.Select(line => line.Split('=', 2)).Where(pair => pair.Length == 2).Select(pair => (pair[0], pair[1]))],
        Source);
}
