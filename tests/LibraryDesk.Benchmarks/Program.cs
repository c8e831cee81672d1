using LibraryDesk.Benchmarks.Ranking;

switch (args.FirstOrDefault())
{
    case "rank":
        await RankBenchmark.RunAsync(Console.Out);
        return 0;
    default:
        await Console.Error.WriteLineAsync("usage: dotnet run -c Release --project tests/LibraryDesk.Benchmarks -- rank");
        return 2;
}
