namespace LibraryDesk.Photos.Drawn;

/// <summary>What a stand-in picture shows.</summary>
public enum DrawnPart
{
    /// <summary>A plant in a pot, with flowers or fruits when they are given.</summary>
    Plant,

    /// <summary>One flower, looked straight into.</summary>
    Flower,

    /// <summary>Fruits beside a ruler.</summary>
    Fruit,

    /// <summary>One fruit cut lengthwise, seeds showing.</summary>
    CutFruit,

    /// <summary>Seeds beside a ruler.</summary>
    Seeds,

    /// <summary>One leaf.</summary>
    Leaf,

    /// <summary>A tray of seedlings.</summary>
    Seedlings,

    /// <summary>A branch of a nightshade with its berries: a look-alike from outside the peppers.</summary>
    Berries,
}

/// <summary>
/// What is to be drawn. Colours and shapes are named by the state ids of the crop guide; a part ignores what it does not show.
/// </summary>
public sealed record DrawnSubject
{
    /// <summary>What the picture shows.</summary>
    public required DrawnPart Part { get; init; }

    /// <summary>Corolla colour; null leaves flowers out of a plant.</summary>
    public string? Corolla { get; init; }

    /// <summary>Colour of the spots in the flower; null for none.</summary>
    public string? Spots { get; init; }

    /// <summary>Anther colour.</summary>
    public string Anthers { get; init; } = "yellow";

    /// <summary>Corolla lobes, 4 to 8.</summary>
    public int Petals { get; init; } = 5;

    /// <summary>Fruit colour; null leaves fruits out of a plant.</summary>
    public string? FruitColour { get; init; }

    /// <summary>Fruit shape.</summary>
    public string FruitShape { get; init; } = "elongate";

    /// <summary>Fruits stand up on the plant instead of hanging.</summary>
    public bool Erect { get; init; }

    /// <summary>The fruit's skin is wrinkled.</summary>
    public bool Wrinkled { get; init; }

    /// <summary>A ring where the calyx meets the stalk.</summary>
    public bool CalyxRing { get; init; }

    /// <summary>Length of one fruit in mm on the ruler.</summary>
    public int FruitLengthMm { get; init; } = 70;

    /// <summary>How many fruits, seeds or seedlings; 0 for the part's usual number.</summary>
    public int Count { get; init; }

    /// <summary>Seed colour.</summary>
    public string SeedColour { get; init; } = "straw";

    /// <summary>Leaves and stems are hairy.</summary>
    public bool Hairy { get; init; }

    /// <summary>Foliage colour.</summary>
    public string Foliage { get; init; } = "green";
}
