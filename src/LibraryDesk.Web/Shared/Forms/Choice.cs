namespace LibraryDesk.Web.Shared.Forms;

/// <summary>One thing that can be chosen.</summary>
/// <param name="Value">What is posted.</param>
/// <param name="Label">What is read.</param>
public sealed record Choice(string Value, string Label);
