using System.Reflection;
using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Tests;

/// <summary>The core reckons only: it knows no database, no web and no clock.</summary>
public sealed class PurityTests
{
    [Fact]
    public void The_core_references_the_base_library_alone() => Assert.Empty(Foreign(typeof(CropGuide).Assembly));

    [Fact]
    public void An_offender_would_be_found() => Assert.Contains(Foreign(typeof(PurityTests).Assembly), name => name.StartsWith("xunit", StringComparison.Ordinal));

    private static List<string> Foreign(Assembly assembly) =>
        [.. assembly.GetReferencedAssemblies().Select(a => a.Name!).Where(n => !n.StartsWith("System.", StringComparison.Ordinal) && n is not ("netstandard" or "mscorlib"))];
}
