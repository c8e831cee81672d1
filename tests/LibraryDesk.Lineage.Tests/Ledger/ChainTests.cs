using LibraryDesk.Lineage.Acts;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Ledger;
using LibraryDesk.Lineage.Seeds;
using static LibraryDesk.Lineage.Tests.TestLibrary;

namespace LibraryDesk.Lineage.Tests.Ledger;

public class ChainTests
{
    public static TheoryData<SeedAct> EveryKind() =>
    [
        new Accessioned(new(1), new AccessionCode(2026, 7), Donor, Day(2026), "capsicum-baccatum", "Lantern’s \"Rest\"", Quantity.OfMilligrams(12_500), 6200, SeedSource.SwapTable, 2025),
        new TransferredIn(new(1), new AccessionCode(2026, 8), "Harrow Fen", "HF-12", ChainHead.Empty.ToString(), Day(2026), null, null, Quantity.OfSeeds(40), null),
        new LotMade(new(2), new LotCode(2026, 31), LotOrigin.Blend, [new(new(1), Quantity.OfSeeds(10), Quantity.OfSeeds(10), 10)], null, Day(2026), SeedUnit.Seeds, null, "C-14"),
        new Packeted(new(2), Day(2026), [new(new(3), new PacketCode('Q', 2026, 418), Quantity.OfSeeds(10))], null),
        new Requested(new(4), new(2), Member),
        new Picked(new(4), new(3)),
        new Lent(new(5), new(3), Member, Day(2026), Day(2027), new(4)),
        new LoanEnded(new(5), new(3), LoanEnding.NothingCameBack, Day(2026), Quantity.OfSeeds(10)),
        new GrownOut(new(6), new(3), new(5), Member, Day(2026), Quantity.OfSeeds(10), new(12, 10, 2, 1, Isolation.Bagged, 40, true, HarvestManner.SameFromEach)),
        new Returned(new(6), new(5), Member, Day(2026), Quantity.OfSeeds(900), 6100),
        new GerminationTested(new(7), new(2), Day(2026), [new(50, 48), new(50, 47)], 14, Quantity.OfSeeds(100)),
        new Named(new(8), new(2), "capsicum-baccatum", "Ferryman’s Lamp", ClaimGrounds.DeskDetermination, Librarian, Day(2026), new("207", OriginLink.Loan, new(3), true, "capsicum 1.0")),
        new Held(new(9), new(2), HoldReason.IntakeQuarantine, Day(2026)),
        new Released(new(9), new(2), Day(2026), "looked at, clean"),
        new Moved(new(2), "C-14", "Freezer 1", Day(2026)),
        new Counted(new(2), Quantity.OfSeeds(100), Quantity.OfSeeds(97), null, Day(2026), "spilled"),
        new Discarded(new(2), Quantity.OfSeeds(3), Day(2026), "mouldy"),
        new TransferredOut(new(3), Quantity.OfSeeds(10), "Harrow Fen", Day(2026)),
        new Recalled(new(10), new(2), "off-types from three packets", Day(2026), [new(3)]),
        new Corrected(3, "typed wrongly", new(new Moved(new(2), null, "C-14", Day(2026))), new(new Moved(new(2), null, "C-15", Day(2026)))),
    ];

    [Theory, MemberData(nameof(EveryKind))]
    public void Every_kind_of_act_reads_back_as_it_was_written(SeedAct act)
    {
        var entry = Chain.Append(ChainHead.Empty, DateTimeOffset.UnixEpoch, Librarian, act);
        Assert.Equal(entry.Payload, SeedActJson.Write(entry.ReadAct()));
        Assert.Equal(act.GetType(), entry.ReadAct().GetType());
        Assert.True(Chain.Verify([entry]).IsSound);
    }

    [Fact]
    public void The_list_above_holds_every_kind() =>
        Assert.Equal<EntryKind>(Enum.GetValues<EntryKind>().Order(), ((IEnumerable<object[]>)EveryKind()).Select(row => ((SeedAct)row[0]).Kind).Order());

    [Theory, MemberData(nameof(EveryKind))]
    public void What_is_hashed_is_the_canonical_JSON_of_everything_but_the_hash(SeedAct act)
    {
        var text = Chain.CanonicalText(Chain.Append(ChainHead.Empty, DateTimeOffset.UnixEpoch, Librarian, act));
        Assert.Equal(CanonicalJson.Write(text), text);
    }

    [Fact]
    public void Long_words_beyond_the_basic_plane_are_hashed_whole()
    {
        for (var length = 1900; length < 2100; length += 7)
        {
            var act = new Released(new(1), new(2), Day(2026), new string('x', length) + string.Concat(Enumerable.Repeat("\U0001F331", 500)));
            var entry = Chain.Append(ChainHead.Empty, DateTimeOffset.UnixEpoch, Librarian, act);
            Assert.Equal(EntryHash.Of(Chain.CanonicalText(entry)), entry.Hash);
            Assert.True(Chain.Verify([entry]).IsSound);
        }
    }

    [Fact]
    public void Half_a_surrogate_pair_is_a_fault_not_a_crash()
    {
        var entry = Small().Entries[0];
        var broken = entry with { Payload = entry.Payload.Replace("Ember", "\ud83d", StringComparison.Ordinal) };
        broken = broken with { Hash = Chain.HashOf(broken) };
        Assert.Equal(ChainFaultKind.Payload, Chain.Verify([broken]).Fault!.Kind);
    }

    [Fact]
    public void Times_are_kept_in_UTC_and_whole_milliseconds()
    {
        var at = new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.FromHours(2)).AddTicks(12_345);
        var entry = Chain.Append(ChainHead.Empty, at, Librarian, new Picked(new(1), new(2)));
        Assert.Equal(new DateTimeOffset(2026, 3, 1, 10, 0, 0, 1, TimeSpan.Zero), entry.At);
        Assert.Equal(TimeSpan.Zero, entry.At.Offset);
    }

    [Fact]
    public void A_sound_chain_verifies_up_to_its_head()
    {
        var library = Small();
        var report = Chain.Verify(library.Entries);
        Assert.True(report.IsSound, report.Fault?.Why);
        Assert.Equal(library.Head, report.Head);
    }

    public static TheoryData<string, ChainFaultKind> Tamperings() => new()
    {
        { "payload", ChainFaultKind.Hash },
        { "actor", ChainFaultKind.Hash },
        { "time", ChainFaultKind.Hash },
        { "kind", ChainFaultKind.Hash },
        { "subjects", ChainFaultKind.Hash },
        { "finer time", ChainFaultKind.Form },
        { "previous", ChainFaultKind.Previous },
        { "hash", ChainFaultKind.Hash },
        { "dropped", ChainFaultKind.Sequence },
        { "twice", ChainFaultKind.Sequence },
    };

    [Theory, MemberData(nameof(Tamperings))]
    public void The_first_entry_that_was_tampered_with_is_named(string how, ChainFaultKind expected)
    {
        var library = Small();
        var entries = library.Entries.ToList();
        var third = entries[2];
        switch (how)
        {
            case "payload": entries[2] = third with { Payload = third.Payload.Replace("10", "11", StringComparison.Ordinal) }; break;
            case "actor": entries[2] = third with { Actor = Member }; break;
            case "time": entries[2] = third with { At = third.At.AddSeconds(1) }; break;
            case "kind": entries[2] = third with { Kind = EntryKind.Picked }; break;
            case "subjects": entries[2] = third with { Subjects = [] }; break;
            case "finer time": entries[2] = third with { At = third.At.AddTicks(1) }; break;
            case "previous": entries[2] = third with { Previous = third.Hash }; break;
            case "hash": entries[2] = third with { Hash = third.Previous }; break;
            case "dropped": entries.RemoveAt(2); break;
            default: entries.Insert(2, entries[1]); break;
        }

        var fault = Chain.Verify(entries).Fault!;
        Assert.Equal(3, fault.Sequence);
        Assert.Equal(expected, fault.Kind);
    }

    [Fact]
    public void An_entry_forged_with_a_fresh_hash_breaks_the_next_one()
    {
        var entries = Small().Entries.ToList();
        var forged = entries[2] with { Actor = Member };
        entries[2] = forged with { Hash = Chain.HashOf(forged) };
        Assert.Equal((4L, ChainFaultKind.Previous), (Chain.Verify(entries).Fault!.Sequence, Chain.Verify(entries).Fault!.Kind));
    }

    [Fact]
    public void A_chain_that_was_cut_or_written_anew_fails_its_checkpoint()
    {
        var library = Small();
        var cut = library.Entries.SkipLast(1);
        Assert.True(Chain.Verify(cut).IsSound);
        Assert.Equal(ChainFaultKind.Checkpoint, Chain.Verify(cut, checkpoints: library.Head).Fault!.Kind);

        var other = new TestLibrary();
        other.Lot(77);
        other.Lot(78);
        var kept = Chain.HeadAfter(library.Entries[1]);
        Assert.Equal(2, Chain.Verify(other.Entries, checkpoints: kept).Fault!.Sequence);
    }

    [Fact]
    public void A_payload_that_is_not_canonical_is_named_even_with_a_fitting_hash()
    {
        var entry = Small().Entries[0];
        var loose = entry with { Payload = entry.Payload.Replace(":", ": ", StringComparison.Ordinal) };
        loose = loose with { Hash = Chain.HashOf(loose) };
        Assert.Equal(ChainFaultKind.Form, Chain.Verify([loose]).Fault!.Kind);
    }

    [Fact]
    public void A_checkpoint_reads_back_from_its_print()
    {
        var head = Small().Head;
        Assert.Equal(head, ChainHead.Read(" " + head.ToString().ToUpperInvariant()).Match(read => read, _ => default));
        Assert.Equal(head, ChainHead.Read($"{head.Height}\n {head.Hash.Hex[..32]} {head.Hash.Hex[32..]}").Match(read => read, _ => default));
    }

    [Theory]
    [InlineData("abc", "checkpoint.shape")]
    [InlineData("twelve: 0f", "checkpoint.shape")]
    [InlineData("12:abc", "checkpoint.length")]
    [InlineData("12:oO1", "checkpoint.letter")]
    public void A_checkpoint_that_cannot_be_one_is_refused_by_what_is_wrong(string typed, string code) =>
        Assert.Equal(code, ChainHead.Read(typed).Refusal?.Code);

    [Fact]
    public void Nothing_in_the_ledger_says_who_a_person_is()
    {
        var library = Small();
        Assert.All(library.Entries, entry => Assert.DoesNotContain("Librarian", Chain.CanonicalText(entry), StringComparison.Ordinal));
        Assert.Equal("text.personal", LibraryDesk.Lineage.Rules.HoldRules.Release(library.State.Holds.First(), library.Today, "ask someone@example.org", library.Today).Refusal?.Code);
        Assert.Equal("text.personal", LibraryDesk.Lineage.Rules.HoldRules.Release(library.State.Holds.First(), library.Today, "call 0171 555 010 12", library.Today).Refusal?.Code);
    }

    private static TestLibrary Small()
    {
        var library = new TestLibrary();
        var lot = library.Lot(100);
        var packets = library.PutUp(lot, 3, 10);
        library.Lend(packets[0]);
        library.Hold(lot.Id.Node);
        return library;
    }
}
