using System.Globalization;

namespace LibraryDesk.Web.Features.Labels;

/// <summary>The style sheet of one print: page size, grid and nudge. The content policy allows no inline style, so sizes come by address.</summary>
public static class SheetStyle
{
    // A page a hair shorter than the paper, so that rounding never makes a blank one behind it.
    private const double Hair = 0.3;

    public static string Of(LabelWish wish)
    {
        var f = wish.Format;
        return string.Create(CultureInfo.InvariantCulture, $$"""
            @page { size: {{f.PageWidth}}mm {{f.PageHeight}}mm; margin: 0; }
            .pg { width: {{f.PageWidth}}mm; height: {{f.PageHeight - Hair}}mm; }
            .block { position: absolute; top: {{f.Top + wish.Down}}mm; left: {{f.Left + wish.Right}}mm; width: {{f.BlockWidth}}mm; }
            .gr { display: grid; grid-template-columns: repeat({{f.Columns}}, {{f.LabelWidth}}mm); grid-auto-rows: {{f.LabelHeight}}mm; column-gap: {{f.ColumnGap}}mm; }
            .sg { display: grid; grid-auto-rows: {{LabelFormat.StakeHeight}}mm; }
            .gr + .sg { margin-top: {{LabelFormat.StakeGap}}mm; }

            """);
    }
}
