using System.Diagnostics.CodeAnalysis;

namespace LibraryDesk.Lineage;

/// <summary>What an act came to: a value, or the refusal that says why not. Never both, never neither.</summary>
/// <typeparam name="T">The value when the desk says yes.</typeparam>
[SuppressMessage("Usage", "CA2225:Operator overloads have named alternates", Justification = "A rule returns its value or its refusal as it is; the named way is Match.")]
public sealed class Outcome<T>
    where T : notnull
{
    private readonly T? _value;

    private Outcome(T? value, Refusal? refusal)
    {
        _value = value;
        Refusal = refusal;
    }

    /// <summary>The refusal, or null when the desk said yes.</summary>
    public Refusal? Refusal { get; }

    /// <summary>True when there is a value.</summary>
    public bool IsAllowed => Refusal is null;

    /// <summary>Reads the outcome: exactly one of the two is called.</summary>
    public TResult Match<TResult>(Func<T, TResult> allowed, Func<Refusal, TResult> refused)
    {
        ArgumentNullException.ThrowIfNull(allowed);
        ArgumentNullException.ThrowIfNull(refused);
        return Refusal is null ? allowed(_value!) : refused(Refusal);
    }

    /// <summary>Reads the outcome in the shape of a guard: <c>if (!outcome.TryGet(out var lent, out var no)) return no;</c></summary>
    public bool TryGet([MaybeNullWhen(false)] out T value, [NotNullWhen(false)] out Refusal? refusal)
    {
        value = _value;
        refusal = Refusal;
        return refusal is null;
    }

    /// <summary>Goes on with the value, or hands the refusal through.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> next)
        where TNext : notnull
    {
        ArgumentNullException.ThrowIfNull(next);
        return Refusal is null ? next(_value!) : Refusal;
    }

    public static implicit operator Outcome<T>(T value)
    {
        ArgumentNullException.ThrowIfNull(value);
        return new(value, null);
    }

    public static implicit operator Outcome<T>(Refusal refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return new(default, refusal);
    }
}
