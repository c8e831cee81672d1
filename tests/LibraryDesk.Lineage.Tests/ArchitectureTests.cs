using System.Reflection;
using LibraryDesk.Lineage.Ledger;

namespace LibraryDesk.Lineage.Tests;

public class ArchitectureTests
{
    [Fact]
    public void The_core_references_nothing_but_the_base_library() => Assert.Empty(Strangers(typeof(Chain).Assembly));

    [Fact]
    public void The_check_above_does_see_a_stranger() =>
        Assert.Contains(typeof(FactAttribute).Assembly.GetName().Name, Strangers(typeof(ArchitectureTests).Assembly));

    private static string[] Strangers(Assembly assembly)
    {
        var baseLibrary = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        return assembly.GetReferencedAssemblies()
            .Select(reference => reference.Name!)
            .Where(name => !File.Exists(Path.Combine(baseLibrary, name + ".dll")))
            .ToArray();
    }
}
