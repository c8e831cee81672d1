using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace LibraryDesk.EndToEnd;

/// <summary>What a librarian does with seed, as in the browser.</summary>
internal static partial class SeedSteps
{
    /// <summary>Takes 200 seeds in from a donor; returns the code of the lot.</summary>
    public static async Task<string> TakeSeedInAsync(this IPage librarian, string donor, string name, string species)
    {
        await librarian.GotoAsync("/lots/new");
        await librarian.Locator("input[name='Form.Donor']").FillAsync(donor);
        await librarian.Locator("input[name='Form.Name']").FillAsync(name);
        await librarian.Locator("select[name='Form.Species']").SelectOptionAsync(species);
        await librarian.Locator("input[name='Form.Amount']").FillAsync("200");
        await librarian.Locator("select[name='Form.AmountUnit']").SelectOptionAsync("seeds");
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Take it in" }).ClickAsync();
        await librarian.WaitForURLAsync("**/lots/L*");
        return new Uri(librarian.Url).Segments[^1];
    }

    /// <summary>Puts up packets of 20 seeds from a lot; returns the code of one of them.</summary>
    public static async Task<string> PutUpPacketsAsync(this IPage librarian, string lot, int count)
    {
        await librarian.GotoAsync($"/lots/{lot}/pack");
        await librarian.Locator("input[name='Form.Count']").FillAsync(count.ToString(System.Globalization.CultureInfo.InvariantCulture));
        await librarian.Locator("input[name='Form.Amount']").FillAsync("20");
        await librarian.Locator("select[name='Form.AmountUnit']").SelectOptionAsync("seeds");
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Put them up" }).ClickAsync();
        await librarian.SeesAsync("The packets are put up");
        // The lot's own packets stand below its lineage, which may show those of its forebears.
        return PacketCode().Matches(await librarian.Locator("main").InnerTextAsync())[^1].Value;
    }

    /// <summary>Returned seed waits to be looked at; somebody has.</summary>
    public static async Task LiftHoldAsync(this IPage librarian, string lot)
    {
        await librarian.GotoAsync($"/lots/{lot}/hold");
        await librarian.GetByLabel("Why is it lifted?").FillAsync("Looked at: dry, clean, no insects.");
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Lift the hold" }).ClickAsync();
        await librarian.WaitForURLAsync("**done=released");
    }

    public static async Task LendAsync(this IPage librarian, string packet, string email)
    {
        await librarian.GotoAsync("/loans");
        await librarian.Locator("input[name='Form.Packet']").FillAsync(packet);
        await librarian.Locator("input[name='Form.Who']").FillAsync(email);
        await librarian.GetByRole(AriaRole.Button, new() { Name = "Lend it" }).ClickAsync();
        await librarian.SeesAsync($"{packet} is lent");
    }

    /// <summary>The member hands seed in from a packet; returns the code of the new lot.</summary>
    public static async Task<string> ReturnSeedAsync(this IPage member, string packet)
    {
        await member.GotoAsync($"/returns/new?packet={packet}");
        await member.Locator("input[name='Form.Grown']").FillAsync("12");
        await member.Locator("input[name='Form.Saved']").FillAsync("9");
        await member.Locator("input[name='Form.Amount']").FillAsync("150");
        await member.Locator("select[name='Form.AmountUnit']").SelectOptionAsync("seeds");
        await member.Locator("input[name='Form.StakeStayed'][value='true']").CheckAsync();
        await member.GetByRole(AriaRole.Button, new() { Name = "Hand in to the library" }).ClickAsync();
        await member.WaitForURLAsync("**/returns/taken/*");
        return LotCode().Match(member.Url + " " + await member.Locator("main").InnerTextAsync()).Value;
    }

    [GeneratedRegex("[A-Z]{1,3}[0-9]{2}-[0-9]{4}-[A-Z0-9]")]
    private static partial Regex PacketCode();

    [GeneratedRegex("L[0-9]{2}-[0-9]{3}")]
    private static partial Regex LotCode();
}
