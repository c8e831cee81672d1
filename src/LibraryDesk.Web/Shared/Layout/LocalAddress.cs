namespace LibraryDesk.Web.Shared.Layout;

/// <summary>Where a form leads back to: an address of this desk, never of another.</summary>
internal static class LocalAddress
{
    public static string OrHome(string? address) =>
        address is ['/', ..] && !address.StartsWith("//", StringComparison.Ordinal)
        && !address.StartsWith("/\\", StringComparison.Ordinal) && !address.Any(char.IsControl)
            ? address
            : "/";
}
