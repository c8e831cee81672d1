namespace LibraryDesk.Desk.Seeds;

/// <summary>Who stands at the counter, and what of theirs wants a word.</summary>
/// <param name="Id">Their id.</param>
/// <param name="Name">What the library calls them.</param>
/// <param name="Out">Packets they have.</param>
/// <param name="CalledBack">Of these, how many an open recall takes in.</param>
/// <param name="Overdue">Of the others, how many whose seed was hoped for before today.</param>
public sealed record CounterBorrower(Guid Id, string Name, int Out, int CalledBack, int Overdue);

/// <summary>Reads the person a librarian lends to.</summary>
public sealed class ReadBorrower(PeopleDirectory people, MemberLoans loans, LibraryClock clock)
{
    public async Task<Outcome<CounterBorrower>> ReadAsync(Actor actor, Guid id, CancellationToken stop)
    {
        if (!(await people.ByIdAsync(actor, id, stop)).TryGet(out var person, out var nobody)) return nobody;
        if (person.Erased) return PeopleDirectory.Gone;
        if (!(await loans.OfAsync(actor, id, stop)).TryGet(out var read, out var no)) return no;
        var today = clock.Today;
        var open = read.Loans.Where(loan => loan.IsOpen).ToArray();
        return new CounterBorrower(id, person.Name.Length > 0 ? person.Name : person.Email, open.Length, open.Count(loan => loan.IsRecalled), open.Count(loan => loan.IsOverdueOn(today)));
    }
}
