using System.Reflection;
using Xunit.Sdk;

namespace LibraryDesk.TestServers;

/// <summary>Runs a theory once on SQLite and once on PostgreSQL. The test takes the database's name and opens a <see cref="TestLibrary"/> on it.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class OnBothAttribute : DataAttribute
{
    /// <inheritdoc />
    public override IEnumerable<object[]> GetData(MethodInfo testMethod) => [["sqlite"], ["postgres"]];
}
