namespace LibraryDesk.Desk.Demo;

/// <summary>The clock the demo is played by: it shows the time of the act being played, never a later one than the present.</summary>
internal sealed class DemoClock : TimeProvider
{
    public DateTimeOffset Now { get; set; }

    public override DateTimeOffset GetUtcNow() => Now;
}
