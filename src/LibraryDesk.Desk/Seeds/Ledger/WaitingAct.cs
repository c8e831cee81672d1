using LibraryDesk.Desk.Seeds.Search;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Desk.Seeds.Ledger;

/// <summary>An act that waits for its turn at the ledger, and whoever waits for its answer.</summary>
internal abstract class WaitingAct(PersonId person, CancellationToken stop)
{
    // The act runs on the writer's thread, but in the language of whoever asked.
    private readonly ExecutionContext? _asker = ExecutionContext.Capture();
    private Exception? _broken;

    public PersonId Person => person;

    public CancellationToken Stop => stop;

    /// <summary>True when the act said yes and its changes were saved.</summary>
    public bool IsAllowed { get; private set; }

    /// <summary>True when whoever asked gave up before the act's turn; they are told so.</summary>
    public bool IsCalledOff
    {
        get
        {
            if (!stop.IsCancellationRequested) return false;
            CallOff(stop);
            return true;
        }
    }

    /// <summary>Runs the act and saves what it did. False when it broke; then nothing of the transaction may be kept.</summary>
    public async Task<bool> TryAsync(SeedWork work)
    {
        try
        {
            var running = Task.FromResult(false);
            if (_asker is null) running = RunAsync(work);
            else ExecutionContext.Run(_asker, _ => running = RunAsync(work), null);
            IsAllowed = await running;
            if (!IsAllowed) return true;
            work.Close();
            await work.Db.SaveChangesAsync(stop);
            await new SearchIndex(work.Db, stop).FollowAsync(work.Appended);
            return true;
        }
        catch (Exception broken)
        {
            _broken = broken;
            return false;
        }
    }

    /// <summary>Gives the answer: the act is committed, or was refused.</summary>
    public abstract void Tell();

    /// <summary>Tells whoever asked what broke.</summary>
    public void Fail(Exception? broken = null)
    {
        if ((broken ?? _broken) is OperationCanceledException && stop.IsCancellationRequested) CallOff(stop);
        else Break(broken ?? _broken ?? new InvalidOperationException("The act ended without an answer."));
    }

    protected abstract Task<bool> RunAsync(SeedWork work);

    protected abstract void CallOff(CancellationToken stop);

    protected abstract void Break(Exception broken);
}

/// <inheritdoc />
internal sealed class WaitingAct<T>(PersonId person, Func<SeedWork, Task<Outcome<T>>> act, CancellationToken stop) : WaitingAct(person, stop)
    where T : notnull
{
    private readonly TaskCompletionSource<Outcome<T>> _answer = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private Outcome<T>? _outcome;

    public Task<Outcome<T>> Answer => _answer.Task;

    public override void Tell() => _answer.TrySetResult(_outcome!);

    protected override async Task<bool> RunAsync(SeedWork work)
    {
        _outcome = await act(work);
        return _outcome.IsAllowed;
    }

    protected override void CallOff(CancellationToken stop) => _answer.TrySetCanceled(stop);

    protected override void Break(Exception broken) => _answer.TrySetException(broken);
}
