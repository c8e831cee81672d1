namespace LibraryDesk.Identification.Guides;

/// <summary>One trait as flat arrays. Tables are state by state, each row holding all forms, so that a row is one run of memory.</summary>
internal sealed class CompiledTrait
{
    /// <summary>Length of a row: forms, rounded up to whole vectors; the rest of a row is 0.</summary>
    public required int Stride { get; init; }

    public required int Index { get; init; }

    public required Trait Trait { get; init; }

    /// <summary>Number of true states; bins for measured traits.</summary>
    public required int States { get; init; }

    /// <summary>Number of answers foreseen.</summary>
    public required int Answers { get; init; }

    /// <summary>P(state | form); all 0 where the form's species has no cell for the trait.</summary>
    public required double[] Theta { get; init; }

    /// <summary>P(answer | form) for a sure answer; all 0 where <see cref="Theta"/> is.</summary>
    public required double[] Phi { get; init; }

    /// <summary>Entropy in nats of the answers of a candidate of one form; 0 where unknown, and for the forms of candidates that have several.</summary>
    public required double[] PhiEntropy { get; init; }

    /// <summary>1 where the form has a distribution, else 0.</summary>
    public required double[] Known { get; init; }

    /// <summary>Forms without a distribution, "something else" not among them.</summary>
    public required int[] Missing { get; init; }

    /// <summary>Mean of <see cref="Phi"/> over the forms that have one, weighted by the guide's own prior.</summary>
    public required double[] PhiPool { get; init; }

    /// <summary>P(answer) when every state is alike, seen by a sure observer.</summary>
    public required double[] PhiUniform { get; init; }

    /// <summary>P(answer) under "something else", the pool by the guide's own prior.</summary>
    public required double[] PhiOther { get; init; }

    /// <summary>Entropy in nats of <see cref="PhiPool"/>.</summary>
    public required double PoolEntropy { get; init; }

    /// <summary>Entropy in nats of <see cref="PhiOther"/>.</summary>
    public required double OtherEntropy { get; init; }

    /// <summary>Mean of <see cref="Theta"/> over the forms that have one, weighted by the guide's own prior.</summary>
    public required double[] ThetaPool { get; init; }

    /// <summary>P(answer | true state) by sureness; null for measured traits, see <see cref="Scale"/>.</summary>
    public required double[][] Confusion { get; init; }

    /// <summary>How reliable answers to the trait are, counts of answers added.</summary>
    public required ObserverReliability Observer { get; init; }

    /// <summary>Bins of a measured trait, else null.</summary>
    public required MeasuredScale? Scale { get; init; }

    /// <summary>Evidence of one answer that names one state, by sureness and state: made once, since most answers are such. Filled as they come.</summary>
    public required Answers.TraitEvidence?[] Singles { get; init; }

    /// <summary>The same tables for the same trait in other words.</summary>
    public CompiledTrait Worded(Trait trait) => new()
    {
        Stride = Stride,
        Index = Index,
        Trait = trait,
        States = States,
        Answers = Answers,
        Theta = Theta,
        Phi = Phi,
        PhiEntropy = PhiEntropy,
        Known = Known,
        Missing = Missing,
        PhiPool = PhiPool,
        PhiUniform = PhiUniform,
        PhiOther = PhiOther,
        PoolEntropy = PoolEntropy,
        OtherEntropy = OtherEntropy,
        ThetaPool = ThetaPool,
        Confusion = Confusion,
        Observer = Observer,
        Scale = Scale,
        // Kept evidence names its trait, so these words keep their own.
        Singles = new Answers.TraitEvidence?[Singles.Length],
    };

    public ReadOnlySpan<double> ThetaRow(int state) => Theta.AsSpan(state * Stride, Stride);

    public ReadOnlySpan<double> PhiRow(int answer) => Phi.AsSpan(answer * Stride, Stride);
}
