using System.Diagnostics;
using System.Text;

namespace LibraryDesk.Cli.Tests;

/// <summary>Runs the built <c>desk</c> as its own process, as a person would.</summary>
internal static class DeskProcess
{
    public sealed record Outcome(int ExitCode, string Output, string Errors)
    {
        public string[] Lines => Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }

    public static async Task<Outcome> RunAsync(string? input, params string[] arguments)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "desk.dll"));
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync();
        var errors = process.StandardError.ReadToEndAsync();
        if (input is not null) await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        return new Outcome(process.ExitCode, await output, await errors);
    }
}
