using LibraryDesk.Benchmarks.Ranking;
using LibraryDesk.Benchmarks.Sessions;

switch (args.FirstOrDefault())
{
    case "rank":
        await RankBenchmark.RunAsync(Console.Out);
        return 0;
    case "sessions":
        await SessionBenchmark.RunAsync(Console.Out);
        return 0;
    default:
        await Console.Error.WriteLineAsync("usage: dotnet run -c Release --project tests/LibraryDesk.Benchmarks -- rank|sessions");
        return 2;
}
