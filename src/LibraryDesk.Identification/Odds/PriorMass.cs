using LibraryDesk.Identification.Guides;

namespace LibraryDesk.Identification.Odds;

/// <summary>Spreads a prior over the forms of a guide.</summary>
internal static class PriorMass
{
    /// <summary>Fills the shares of all forms without origin; they sum to 1, or are all 0 when no candidate is in play.</summary>
    public static void FillBase(CompiledGuide guide, Prior prior, Span<double> row)
    {
        row.Clear();
        if (!prior.IsFlat && prior.Among is null)
        {
            guide.BasePrior.CopyTo(row);
        }
        else
        {
            for (var f = 0; f < guide.Forms.Length; f++)
            {
                var candidate = guide.Guide.Candidates[guide.Forms[f].Candidate];
                if (prior.Among is not null && !prior.Among.Contains(candidate.Id)) continue;
                row[f] = guide.Forms[f].Weight * (prior.IsFlat ? 1 : candidate.Prior);
            }
        }

        var sum = Rows.Sum(row);
        if (sum > 0) Rows.Scale(row, 1 / sum);
    }

    /// <summary>Fills the shares of a packet's lot; what its claims leave open goes by <paramref name="baseRow"/>. False when none of it is in play.</summary>
    public static bool FillPacket(CompiledGuide guide, PossiblePacket packet, ReadOnlySpan<double> baseRow, Span<double> row)
    {
        row.Clear();
        var claimed = 0.0;
        foreach (var share in packet.Shares)
        {
            var candidate = guide.CandidateIndex(share.Candidate);
            if (candidate < 0 || !(share.Share > 0)) continue;
            claimed += share.Share;
            Spread(guide, candidate, share, baseRow, row);
        }

        if (claimed < 1) Rows.AddScaled(row, baseRow, 1 - claimed);
        var sum = Rows.Sum(row);
        if (!(sum > 0)) return false;
        Rows.Scale(row, 1 / sum);
        return true;
    }

    private static void Spread(CompiledGuide guide, int candidate, TaxonShare share, ReadOnlySpan<double> baseRow, Span<double> row)
    {
        var first = guide.FirstForm[candidate];
        var end = guide.FirstForm[candidate + 1];
        // A candidate out of play stays out of play whatever a packet is called.
        if (baseRow[first] == 0) return;
        var named = -1;
        for (var f = first; f < end && share.Form is not null; f++)
        {
            if (guide.Forms[f].Form?.Id == share.Form) named = f;
        }

        if (named >= 0)
        {
            row[named] += share.Share;
            return;
        }

        for (var f = first; f < end; f++) row[f] += share.Share * guide.Forms[f].Weight;
    }
}
