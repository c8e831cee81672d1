namespace LibraryDesk.Web.Tests.Language;

public class BareWordsTests
{
    [Theory]
    [InlineData("""<p>@Say["Sign in"]</p>""")]
    [InlineData("""<p class="big box" id="here">@_name, @x.ToString("0.0")</p>""")]
    [InlineData("""<TextField Label="@Say["Name"]" Name="@nameof(Name)" Hint="@(_a ? Say["One"] : null)" />""")]
    [InlineData("""@if (a < b && name == "x") {<b>@a</b>} else if (c) { <i>@Say.Count(n, $"{n} seed", $"{n} seeds")</i> }""")]
    [InlineData("""@foreach (var x in Say.Linked($"a {b["c d"]}")) { var y = "no words"; <li @key="x">@x</li> }""")]
    [InlineData("""<!DOCTYPE html><TextField Label="@Say["Who"]" Error="@Fault("who")" />""")]
    [InlineData("""<TextField Error="@(_faults.FirstOrDefault(fault => fault.FieldId == "why")?.Message)" />""")]
    [InlineData("""<p>@Say[$"Lot {code} of {(b ? "c" : "d")}"] &middot; 3 %</p>""")]
    [InlineData("@* words *@ <p></p>\n@code {\n    string A = \"Words\";\n}")]
    public void What_asks_the_word_book_is_not_bare(string razor) => Assert.Empty(BareWords.In(razor));

    [Theory]
    [InlineData("""<p>Sign in</p>""", "Sign in")]
    [InlineData("""<p>@Say["Lots"] and @more</p>""", "and")]
    [InlineData("""<TextField Label="Name" Name="name" />""", "Name")]
    [InlineData("""<td data-l="Role">@role</td>""", "Role")]
    [InlineData("""<h1>@(_name is null ? "My desk" : $"Hello, {_name}")</h1>""", "My desk", "Hello,")]
    [InlineData("""@if (a) { <b>Yes</b> } else { <i aria-label="No way">@x</i> }""", "Yes", "No way")]
    [InlineData("""<TextField Label="label" Unit="metres" />""", "metres")]
    [InlineData("""@switch (a) { case 1: <b>One</b> break; default: <b>Many</b> break; }""", "One", "Many")]
    [InlineData("""<Plate Kind="Case"><b>@x</b><br />Here</Plate>""", "Case", "Here")]
    public void Words_in_the_markup_are_found(string razor, params string[] words) => Assert.Equal(words, BareWords.In(razor));
}
