using FsCheck.Xunit;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Lineage.Tests.Laws;

/// <summary>The ledger gives away any single flipped bit, and says whose it is.</summary>
public class FlippedBitLaws
{
    [Property(MaxTest = 5)]
    public void Any_flipped_bit_is_found_and_its_entry_named(int seed)
    {
        var history = new RandomHistory(seed, 25);
        for (var at = 0; at < history.Entries.Count; at++)
        {
            var entries = history.Entries.ToArray();
            var before = at == 0 ? ChainHead.Empty : Chain.HeadAfter(entries[at - 1]);
            foreach (var flipped in FlippedBits.Of(history.Entries[at]))
            {
                entries[at] = flipped;
                Assert.Equal(at + 1, Chain.Verify(entries[at..], before, history.Head).Fault?.Sequence);
            }
        }
    }
}
