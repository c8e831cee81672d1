namespace LibraryDesk.Desk.Demo;

/// <summary>The people of the demo, once they have accounts.</summary>
internal sealed class DemoCast
{
    private readonly Dictionary<string, Actor> _actors = new(StringComparer.Ordinal);

    public void Add(string handle, Guid id, string role) => _actors.Add(handle, new Actor(id, role));

    /// <summary>The person a step names; throws when nobody bears that handle.</summary>
    public Actor Actor(DemoStep step, string? handle) =>
        handle is not null && _actors.TryGetValue(handle, out var actor) ? actor : throw step.Wrong($"nobody is called \"{handle}\"");

    public Guid Id(DemoStep step, string handle) => Actor(step, handle).UserId!.Value;
}
