namespace LibraryDesk.Desk.Demo;

/// <summary>
/// The clock the demo is played by: it shows the time of the act being played. Every reading is a millisecond after the one before, so that
/// what one act does one after the other is also kept in that order, photos of one look for instance.
/// </summary>
internal sealed class DemoClock : TimeProvider
{
    private DateTimeOffset _act;
    private DateTimeOffset _last;

    /// <summary>Puts the clock to the time of the next act; one at the same time comes after the one before.</summary>
    public void MoveTo(DateTimeOffset time)
    {
        if (time == _act) return;
        _act = _last = time;
    }

    public override DateTimeOffset GetUtcNow() => _last = _last.AddMilliseconds(1);
}
