using LibraryDesk.Data.Cases;
using LibraryDesk.Desk.Cases.Review;
using LibraryDesk.Desk.Words;

namespace LibraryDesk.Desk.Tests.Review;

/// <summary>Grounds are kept as facts: whoever caused them, everybody reads them in their own language.</summary>
public sealed class PeoplesGroundsTests
{
    private static readonly PeoplesGrounds Facts = new(2, 3, 1, true, ["Spots in the flower"], "Q26-0001-A");

    [Fact]
    public void They_are_read_in_the_readers_language_with_the_guides_own_words()
    {
        var row = Row(Facts.ToJson(), null);
        using (Languages.Speak("en"))
        {
            Assert.Equal(
                "Two of three opinions, each sealed before the others were seen, name the same. One of them came to it in the review. The odds put it under 1 in 20; the people decided against them. "
                + "Speaks against it: Spots in the flower. They looked at that and hold to it. The variety is by its origin: the plant is tied to packet Q26-0001-A, and no trait contradicts it.",
                PeoplesGrounds.Of(row));
        }
        using var _ = Languages.Speak("es");
        Assert.Equal(
            "Dos de tres opiniones, cada una sellada antes de ver las demás, nombran lo mismo. Una de ellas, solo en la revisión. Las probabilidades lo ponen por debajo de 1 de 20; las personas decidieron en contra de ellas. "
            + "Habla en contra: Manchas de la flor. Lo miraron y lo mantienen. La variedad es por su origen: la planta está unida al sobre Q26-0001-A y ningún rasgo lo contradice.",
            PeoplesGrounds.Of(row));
    }

    [Fact]
    public void What_a_librarian_wrote_and_what_an_older_row_says_stay_as_written()
    {
        using var _ = Languages.Speak("es");
        Assert.Equal("{seen at the counter}", PeoplesGrounds.Of(Row("{seen at the counter}", Guid.NewGuid())));
        Assert.Equal("Two opinions name the same.", PeoplesGrounds.Of(Row("Two opinions name the same.", null)));
    }

    private static DeterminationRow Row(string grounds, Guid? alone) =>
        new() { Taxon = "capsicum-annuum", Grounds = grounds, AloneById = alone, GuideId = "capsicum", GuideVersion = "2026.1", OddsJson = "{}" };
}
