namespace LibraryDesk.Desk.Words;

/// <summary>The words of every refusal, wherever it is made. The English stays with the rule that refuses.</summary>
public static class RefusalText
{
    public static WordBook Say { get; } = new(typeof(RefusalText));
}
