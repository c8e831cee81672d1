using LibraryDesk.Benchmarks.CrossValidation;
using LibraryDesk.Benchmarks.Lineage;
using LibraryDesk.Benchmarks.Ranking;
using LibraryDesk.Benchmarks.Serving;
using LibraryDesk.Benchmarks.Sessions;

switch (args.FirstOrDefault())
{
    case "all":
        await RankBenchmark.RunAsync(Console.Out);
        await Console.Out.WriteLineAsync();
        await BatchBenchmark.RunAsync(Console.Out);
        await Console.Out.WriteLineAsync();
        await SessionBenchmark.RunAsync(Console.Out);
        return 0;
    case "rank":
        await RankBenchmark.RunAsync(Console.Out);
        return 0;
    case "batch":
        await BatchBenchmark.RunAsync(Console.Out);
        return 0;
    case "sessions":
        await SessionBenchmark.RunAsync(Console.Out);
        return 0;
    case "lineage":
        await LineageBenchmark.RunAsync(Console.Out, args);
        return 0;
    case "serve":
        await ServeBenchmark.RunAsync(Console.Out);
        return 0;
    case "crossvalidation":
        return await CrossValidationBenchmark.RunAsync(Console.Out);
    default:
        await Console.Error.WriteLineAsync("usage: dotnet run -c Release --project tests/LibraryDesk.Benchmarks -- all|rank|batch|sessions|crossvalidation|serve|lineage [--packets N]");
        return 2;
}
