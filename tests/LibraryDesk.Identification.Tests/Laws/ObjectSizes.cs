using System.Reflection;
using System.Runtime.CompilerServices;

namespace LibraryDesk.Identification.Tests.Laws;

/// <summary>Reckons how many bytes the objects of a result take that were not there before.</summary>
internal sealed class ObjectSizes
{
    private readonly HashSet<object> _known = new(ReferenceEqualityComparer.Instance);

    /// <param name="there">What was there before: nothing that these reach is counted.</param>
    public ObjectSizes(params object[] there)
    {
        foreach (var one in there) Walk(one, _known);
    }

    /// <summary>Bytes of all objects that the result reaches and that were not there.</summary>
    public long Of(object result)
    {
        var reached = new HashSet<object>(ReferenceEqualityComparer.Instance);
        Walk(result, reached);
        return reached.Where(o => !_known.Contains(o) && o is not Array { Length: 0 }).Sum(SizeOf);
    }

    private static void Walk(object root, HashSet<object> reached)
    {
        var open = new Stack<object>([root]);
        while (open.TryPop(out var one))
        {
            // Types and methods lead into the runtime itself.
            if (one is MemberInfo or Delegate or Pointer || (!one.GetType().IsValueType && !reached.Add(one)) || one is string) continue;
            foreach (var next in Parts(one)) open.Push(next);
        }
    }

    private static IEnumerable<object> Parts(object one)
    {
        var type = one.GetType();
        if (one is Array array) return IsPlain(type.GetElementType()!) ? [] : array.Cast<object?>().OfType<object>();
        return FieldsOf(type).Where(f => !IsPlain(f.FieldType)).Select(f => f.GetValue(one)).OfType<object>();
    }

    private static bool IsPlain(Type type) => type.IsPrimitive || type.IsEnum || type.IsPointer;

    private static IEnumerable<FieldInfo> FieldsOf(Type? type)
    {
        for (; type is not null; type = type.BaseType)
        {
            foreach (var field in type.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)) yield return field;
        }
    }

    /// <summary>What one more object of that kind and length allocates; made twice, since the first may fill caches of the runtime.</summary>
    private static long SizeOf(object one)
    {
        Make(one);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var made = Make(one);
        var bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        GC.KeepAlive(made);
        return bytes;
    }

    private static object Make(object one) => one switch
    {
        string text => new string('x', text.Length),
        Array array => Array.CreateInstance(array.GetType().GetElementType()!, array.Length),
        _ => RuntimeHelpers.GetUninitializedObject(one.GetType()),
    };
}
