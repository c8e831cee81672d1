using LibraryDesk.Data.Settings;
using LibraryDesk.Web.Features.Settings;

namespace LibraryDesk.Web.Tests.Settings;

public sealed class SettingsFormTests
{
    [Theory]
    [InlineData("")]
    [InlineData("two weeks")]
    [InlineData("1.5")]
    [InlineData("-3")]
    [InlineData("99999999999")]
    public void A_number_that_cannot_be_read_is_refused_and_never_taken_for_none(string typed)
    {
        var form = SettingsForm.From(new LibrarySettingsRow());
        Assert.Empty(form.Faults());
        form.IntakeHoldDays = typed;
        form.RecountEveryDays = typed;
        Assert.Equal(["hold", "recount"], form.Faults().Select(fault => fault.FieldId));
        Assert.Throws<InvalidOperationException>(() => form.WriteTo(new LibrarySettingsRow()));
    }

    [Fact]
    public void What_is_read_from_the_settings_is_written_back()
    {
        var row = new LibrarySettingsRow { Name = "Quillbrook", CodePrefix = "Q", IntakeHoldDays = 21, RecountEveryDays = 0, RegrowBelowSeeds = 40 };
        var back = new LibrarySettingsRow { IntakeHoldDays = 1, RecountEveryDays = 1 };
        SettingsForm.From(row).WriteTo(back);
        Assert.Equal((21, 0, 40), (back.IntakeHoldDays, back.RecountEveryDays, back.RegrowBelowSeeds));
    }
}
