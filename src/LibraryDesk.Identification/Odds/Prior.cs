namespace LibraryDesk.Identification.Odds;

/// <summary>What is believed before anything is looked at.</summary>
/// <param name="IsFlat">True gives every candidate in play the same share; forms keep their weights inside their species.</param>
/// <param name="Among">Candidate ids in play; null means all. Ids the guide does not have are ignored; check them first with <see cref="UnknownAmong"/>.</param>
/// <param name="Origin">The member's packets that the plant may be from, or null.</param>
public sealed record Prior(bool IsFlat = false, IReadOnlyList<string>? Among = null, Origin? Origin = null)
{
    /// <summary>The guide's own shares.</summary>
    public static Prior OfGuide { get; } = new();

    /// <summary>Every candidate alike.</summary>
    public static Prior Flat { get; } = new(IsFlat: true);

    /// <summary>The ids of <see cref="Among"/> that the guide does not have.</summary>
    public IReadOnlyList<string> UnknownAmong(Guides.CropGuide guide) =>
        Among is null ? [] : [.. Among.Where(id => guide.FindCandidate(id) is null)];
}

/// <summary>Where the plant may come from.</summary>
/// <param name="Lambda">Probability that the plant is one of the packets, 0 to 1; the rest goes by the guide's shares.</param>
/// <param name="Packets">The packets; their weights need not sum to 1.</param>
public sealed record Origin(double Lambda, IReadOnlyList<PossiblePacket> Packets);

/// <summary>A packet the plant may be from.</summary>
/// <param name="Id">The packet's code.</param>
/// <param name="Weight">Seeds sown of it, or 1 where not known; 0 or more.</param>
/// <param name="Shares">What the lot's name claims make of it. What is missing to 1 goes by the guide's shares: the name may be wrong.</param>
/// <param name="OwnTraits">Traits known of the lot itself, from the variety's description or photos of the lot. Empty when none.</param>
public sealed record PossiblePacket(string Id, double Weight, IReadOnlyList<TaxonShare> Shares, IReadOnlyList<OwnTrait> OwnTraits)
{
    /// <summary>What is known of the lot itself for a trait; null where nothing is, and for a measured trait.</summary>
    internal OwnTrait? Own(Guides.Trait trait)
    {
        for (var i = 0; i < OwnTraits.Count; i++)
        {
            if (OwnTraits[i].Trait == trait.Id) return trait.Kind == Guides.TraitKind.Measured ? null : OwnTraits[i];
        }

        return null;
    }
}

/// <summary>A share of a lot: a species, or one form of it.</summary>
/// <param name="Form">Form id, or null for the species as a whole.</param>
/// <param name="Share">Above 0 and at most 1.</param>
public sealed record TaxonShare(string Candidate, string? Form, double Share);

/// <summary>How often plants of one lot show the states of one trait; takes the place of the form's frequencies.</summary>
/// <param name="Shares">State ids and their shares; states not named keep a small share each. Measured traits cannot be given.</param>
public sealed record OwnTrait(string Trait, IReadOnlyDictionary<string, double> Shares);
