using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Cli;

/// <summary>Finds a guide by the id of a built-in one, with <c>@version</c> where it must be that one, or by the path of a file.</summary>
internal static class GuideByName
{
    /// <summary>The guide, or null after saying on standard error what is wrong.</summary>
    public static async Task<CropGuide?> OpenAsync(string name, CancellationToken stop)
    {
        var at = name.LastIndexOf('@');
        var reading = await ReadAsync(name, stop);
        if (reading is null && at > 0 && BuiltInGuides.Open(name[..at])?.Guide is { } current)
        {
            if (current.Version == name[(at + 1)..]) return current;
            await Console.Error.WriteLineAsync($"guide {current.Id} {name[(at + 1)..]} is gone from here: this desk has {current.Id} {current.Version}. Give the path of the old guide file, or take the current one");
            return null;
        }

        if (reading is null)
        {
            await Console.Error.WriteLineAsync($"no guide {name}: give the path of a guide file or one of {string.Join(", ", BuiltInGuides.Ids)}");
            return null;
        }

        foreach (var fault in reading.Faults) await Console.Error.WriteLineAsync($"{name}: {fault}");
        return reading.Guide;
    }

    /// <summary>The reading with its faults, or null when there is neither a file nor a built-in guide of that name.</summary>
    public static async Task<GuideReading?> ReadAsync(string name, CancellationToken stop)
    {
        // A bare word is a built-in guide even where a folder of that name lies about.
        if (BuiltInGuides.Open(name) is { } builtIn) return builtIn;
        return File.Exists(name) ? GuideFile.Read(await File.ReadAllBytesAsync(name, stop)) : null;
    }
}
