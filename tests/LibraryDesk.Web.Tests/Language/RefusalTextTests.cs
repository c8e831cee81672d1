using LibraryDesk.Desk.Words;
using LibraryDesk.Lineage;
using LibraryDesk.Lineage.Codes;
using LibraryDesk.Lineage.Seeds;
using LibraryDesk.Web.Shared.Forms;

namespace LibraryDesk.Web.Tests.Language;

public class RefusalTextTests
{
    private static readonly Refusal Held = new(
        "seed.on-hold", $"This seed is held ({Sentence.Of($"health")}) since {new DateOnly(2026, 4, 2):d MMMM yyyy}. Lift the hold first, or take other seed.");

    [Fact]
    public void A_refusal_keeps_its_English_whoever_reads()
    {
        using var _ = Languages.Speak("es");
        Assert.Equal("This seed is held (health) since 2 April 2026. Lift the hold first, or take other seed.", Held.Message);
    }

    [Fact]
    public void Values_dates_and_words_within_are_in_the_readers_language()
    {
        using var _ = Languages.Speak("es");
        Assert.Equal("Esta semilla está retenida (sanidad) desde el 2 de abril de 2026. Levanta antes la retención, o toma otra semilla.", new FormFault(null, Held).Message);
        Assert.Equal("Un código de lote empieza por L, por ejemplo L26-031. Este empieza por X.", RefusalText.Say[LotCode.Read("X26-031").Refusal!]);
        var inner = new Refusal("amount", "Give an amount above nothing.");
        Assert.Equal("Lote L26-031: Indica una cantidad mayor que cero. No se ha envasado nada.", RefusalText.Say[new Refusal("amount", $"Lot {"L26-031"}: {inner.Words} Nothing was put up.")]);
        Assert.Equal("12,5 g", RefusalText.Say[Quantity.OfMilligrams(12_500).InWords]);
    }

    [Fact]
    public void In_English_nothing_changes()
    {
        using var _ = Languages.Speak("en");
        Assert.Equal(Held.Message, RefusalText.Say[Held]);
        Assert.Equal("1 seed", Quantity.OfSeeds(1).ToString());
    }
}
