using LibraryDesk.Identification.Answers;
using LibraryDesk.Identification.Guides;
using LibraryDesk.Identification.Odds;

namespace LibraryDesk.Identification.Looks;

/// <summary>What a further sure answer to an answered trait would be under each form: P(new answer | form, answers so far).</summary>
internal sealed class SecondLook
{
    private SecondLook(double[] phi, double[] entropy)
    {
        Phi = phi;
        Entropy = entropy;
    }

    public double[] Phi { get; }

    public double[] Entropy { get; }

    public static SecondLook Of(Belief belief, TraitEvidence evidence)
    {
        var trait = evidence.Trait;
        var stride = trait.Stride;
        var phi = new double[trait.Answers * stride];
        var norm = new double[stride];
        var scratch = new double[stride * (evidence.Looks.Length + 1)];
        for (var y = 0; y < trait.Answers; y++)
        {
            var row = phi.AsSpan(y * stride, stride);
            Likelihood.FillPlain(belief.Guide, trait, Extended(trait, evidence.Looks, y), belief.Base, row, scratch);
            for (var f = 0; f < stride; f++) norm[f] += row[f];
        }

        var entropy = new double[stride];
        for (var y = 0; y < trait.Answers; y++)
        {
            for (var f = 0; f < belief.Guide.Forms.Length; f++)
            {
                ref var p = ref phi[(y * stride) + f];
                p = norm[f] > 0 ? p / norm[f] : 1.0 / trait.Answers;
                if (p > 0) entropy[f] -= p * Math.Log(p);
            }
        }

        // As in the compiled guide: forms of one candidate are reckoned together.
        var guide = belief.Guide;
        foreach (var c in guide.ManyFormed) entropy.AsSpan(guide.FirstForm[c], guide.FirstForm[c + 1] - guide.FirstForm[c]).Clear();

        return new SecondLook(phi, entropy);
    }

    /// <summary>The looks so far with one more that names answer <paramref name="y"/>: a look of its own where the trait varies, else the same state seen again.</summary>
    private static double[][] Extended(CompiledTrait trait, double[][] looks, int y)
    {
        var seen = new double[trait.States];
        for (var s = 0; s < seen.Length; s++) seen[s] = trait.Confusion[0][(s * trait.Answers) + y];
        if (trait.Trait.VariesWithinPlant) return [.. looks, seen];
        for (var s = 0; s < seen.Length; s++) seen[s] *= looks[0][s];
        return [seen];
    }
}
