using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.Rules;

/// <summary>Decides about corrections. Nothing is edited: a correction is a new entry that says what it corrects and why.</summary>
public static class CorrectionRules
{
    public const string NotUndoableCode = "correction.not-undoable";
    public const string OtherThingCode = "correction.other-thing";
    public const string CorrectedAlreadyCode = "correction.corrected-already";
    public const string GoneOnCode = "correction.gone-on";

    /// <summary>Undoes an entry, or says it again rightly.</summary>
    /// <param name="entry">The entry to correct, as it stands in the ledger. Of a correction that said something else instead, that is corrected.</param>
    /// <param name="isCorrectedAlready">True when a later entry corrects this one: then that later one is to be corrected.</param>
    /// <param name="instead">What it should have said, already allowed by the rule of its own kind; null to undo it.</param>
    /// <param name="why">In words.</param>
    /// <param name="slice">The state that the entry touches: its nodes, their loans and requests. It is tried on, and must be thrown away afterwards.</param>
    public static Outcome<Corrected> Correct(LedgerEntry entry, bool isCorrectedAlready, SeedAct? instead, string? why, SeedState slice)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(slice);
        if (Checks.Text(why, "Say why it is corrected in a few words.") is { } noReason) return noReason;
        if (isCorrectedAlready) return new Refusal(CorrectedAlreadyCode, "This entry was corrected already. Correct the correction instead.");
        var read = entry.ReadAct();
        var was = read is Corrected correctedBefore ? correctedBefore.Instead?.Act : read;
        if (was is null) return new Refusal(NotUndoableCode, "An undoing is not undone. Do the act again instead.");
        if (instead is not null && (instead.Kind != was.Kind || !instead.Subjects.Take(1).SequenceEqual(was.Subjects.Take(1)))) return new Refusal(OtherThingCode, "A correction is about the same thing as the entry it corrects.");
        var correction = new Corrected(entry.Sequence, why!.Trim(), new ActText(was), instead is null ? null : new ActText(instead));
        try
        {
            new SeedReplay(slice, entry.Sequence).Apply(correction);
        }
        catch (LedgerMisfitException)
        {
            return new Refusal(GoneOnCode, "Seed has gone on from there already, so this cannot be undone any more. Undo the later entries first, or count the stock as it is.");
        }

        return correction;
    }
}
