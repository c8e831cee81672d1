namespace LibraryDesk.Web.Features.Account;

/// <summary>Where to go after signing in: an address of this desk, never of another.</summary>
internal static class LocalAddress
{
    public static string OrHome(string? address) =>
        address is ['/', ..] && !address.StartsWith("//", StringComparison.Ordinal)
        && !address.StartsWith("/\\", StringComparison.Ordinal) && !address.Any(char.IsControl)
            ? address
            : "/";
}
