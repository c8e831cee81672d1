using System.Diagnostics;
using System.Text.Json;

namespace LibraryDesk.Identification.Tests.Learning;

/// <summary>Debian's python3-sklearn, run as a process; tests that need it are skipped where it is absent.</summary>
internal static class ScikitLearn
{
    private const string Python = "/usr/bin/python3";

    public static async Task<double[][]> RunAsync(object job)
    {
        Skip.IfNot(File.Exists(Python), "there is no /usr/bin/python3");
        Skip.IfNot((await PythonAsync("import sklearn", null)).ExitCode == 0, "python3-sklearn is not installed");
        var script = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "Learning", "categorical_bayes.py"));
        var (exitCode, output, errors) = await PythonAsync(script, JsonSerializer.Serialize(job));
        Assert.True(exitCode == 0, errors);
        return JsonSerializer.Deserialize<double[][]>(output)!;
    }

    private static async Task<(int ExitCode, string Output, string Errors)> PythonAsync(string script, string? input)
    {
        var start = new ProcessStartInfo(Python) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add("-c");
        start.ArgumentList.Add(script);
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (input is not null) await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        return (process.ExitCode, await output, await errors);
    }
}
