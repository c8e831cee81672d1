using System.CommandLine;
using LibraryDesk.Desk.People;
using LibraryDesk.Desk.Seeds;
using Microsoft.Extensions.DependencyInjection;

namespace LibraryDesk.Cli.Verbs;

/// <summary><c>desk trace CODE</c>: where the seed of a packet, lot or accession came from, what became of it and who has it. People are shown by their opaque ids.</summary>
internal static class TraceVerb
{
    public static Command Create()
    {
        var library = new LibraryConnection();
        var code = new Argument<string>("code") { Description = "The code of a packet, a lot or an accession." };
        var command = new Command("trace", "Say where seed came from, what became of it, and who has it.") { code };
        library.AddTo(command);
        command.SetAction((parsed, stop) => library.RunAsync(parsed, async services =>
        {
            var trace = services.GetRequiredService<TraceSeed>();
            var outcome = await trace.ReadAsync(Actor.System, parsed.GetValue(code), stop);
            if (!outcome.TryGet(out var found, out var refusal))
            {
                await Console.Error.WriteLineAsync(refusal.Message);
                return LibraryConnection.CannotOpen;
            }
            var codes = await trace.CodesAsync(found, stop);
            Console.WriteLine($"from: {string.Join(", ", found.Ancestors.Select(node => codes[node]))}");
            Console.WriteLine($"into: {string.Join(", ", found.Descendants.Select(node => codes[node]))}");
            foreach (var holder in found.Holders) Console.WriteLine($"{codes[holder.Packet.Node]} with {holder.Person.Value}");
            return 0;
        }));
        return command;
    }
}
