using LibraryDesk.Lineage.Seeds;

namespace LibraryDesk.Lineage.MixUps;

/// <summary>
/// Plants that the chosen causes reach, in groups that share the fate of a packet: within a group all ways the packets can be off or sound are
/// enumerated, between groups probabilities multiply.
/// </summary>
internal sealed class FateGroups(CauseKind[] kinds)
{
    /// <summary>The most packets whose fates are enumerated together: 2^14 ways.</summary>
    private const int MostTogether = 14;

    private readonly List<Group> _groups = [];
    private readonly Dictionary<(int Cause, NodeId Packet), Group> _groupOf = [];

    public void Add(TestedPlant plant, Reach[] reach) => Place(new Member(plant.IfName, Array.ConvertAll(kinds, plant.OffBy), reach, null));

    public void Add(MorePlants more, Reach[] reach) => Place(new Member(1, Array.ConvertAll(kinds, _ => 0.0), reach, more));

    /// <summary>Takes groups that are too large apart, plant by plant. False when there was one.</summary>
    public bool SplitTheLargest()
    {
        var tooLarge = _groups.FindAll(group => group.Fates.Count > MostTogether);
        foreach (var group in tooLarge)
        {
            _groups.Remove(group);
            foreach (var member in group.Members)
            {
                var alone = new Group { HasMore = member.More is not null };
                alone.Members.Add(member);
                alone.Fates.AddRange(Fates(member).Take(MostTogether));
                _groups.Add(alone);
            }
        }

        return tooLarge.Count == 0;
    }

    /// <summary>The logarithm of the probability at given shares; with further plants, one for each number of them that come up off.</summary>
    public double[] Logs(double[] phi, int more)
    {
        var (log, product) = (0.0, 1.0);
        double[]? checks = null;
        foreach (var group in _groups)
        {
            if (group.HasMore)
            {
                checks = group.WithChecks(phi, more);
                continue;
            }

            // Multiplied while there is room, so that the logarithm is taken seldom.
            product *= group.Probability(phi);
            if (product > 1e-200) continue;
            log += Math.Log(product);
            product = 1;
        }

        log += Math.Log(product);
        var logs = new double[more + 1];
        for (var at = 0; at <= more; at++) logs[at] = log + (checks is null ? 0 : Math.Log(checks[at]));
        return logs;
    }

    private static IEnumerable<(int Cause, NodeId Packet)> Fates(Member member) =>
        member.Reach.SelectMany((reach, cause) => reach.Packets.Select(packet => (cause, packet.Packet)));

    private void Place(Member member)
    {
        var mine = new Group { HasMore = member.More is not null };
        mine.Members.Add(member);
        foreach (var fate in Fates(member))
        {
            if (!_groupOf.TryGetValue(fate, out var with))
            {
                mine.Fates.Add(fate);
                continue;
            }

            if (with == mine || !_groups.Remove(with)) continue;
            mine.Fates.AddRange(with.Fates);
            mine.Members.AddRange(with.Members);
            mine.HasMore |= with.HasMore;
            foreach (var joined in with.Fates) _groupOf[joined] = mine;
        }

        foreach (var fate in mine.Fates) _groupOf[fate] = mine;
        _groups.Add(mine);
    }

    private sealed record Member(double IfName, double[] OffBy, Reach[] Reach, MorePlants? More);

    private sealed class Group
    {
        public List<(int Cause, NodeId Packet)> Fates { get; } = [];

        public List<Member> Members { get; } = [];

        public bool HasMore { get; set; }

        public double Probability(double[] phi)
        {
            var sum = 0.0;
            for (var way = 0; way < 1 << Fates.Count; way++) sum += Way(way, phi, out _);
            return sum;
        }

        public double[] WithChecks(double[] phi, int more)
        {
            var sums = new double[more + 1];
            for (var way = 0; way < 1 << Fates.Count; way++)
            {
                var probability = Way(way, phi, out var checks);
                AddChecks(sums, probability, checks.Sound, checks.Slip);
            }

            return sums;
        }

        private double Way(int way, double[] phi, out (double Sound, double Slip) checks)
        {
            checks = (1, 0);
            var probability = 1.0;
            for (var fate = 0; fate < Fates.Count; fate++) probability *= (way >> fate & 1) == 1 ? phi[Fates[fate].Cause] : 1 - phi[Fates[fate].Cause];
            foreach (var member in Members)
            {
                var (sound, off) = Split(member, way, phi);
                if (member.More is { } further) checks = (sound, further.Slip);
                else probability *= (sound * member.IfName) + off;
            }

            return probability;
        }

        // Plants grown as a check are alike: how many come up off is binomial.
        private static void AddChecks(double[] sums, double probability, double sound, double slip)
        {
            var count = sums.Length - 1;
            var off = (sound * slip) + ((1 - sound) * (1 - slip));
            var ways = 1.0;
            for (var k = 0; k <= count; k++)
            {
                sums[k] += probability * ways * Math.Pow(off, k) * Math.Pow(1 - off, count - k);
                ways = ways * (count - k) / (k + 1);
            }
        }

        // A plant that two causes reach is off by the first that hits it, in the order of the library's numbers.
        private (double Sound, double Off) Split(Member member, int way, double[] phi)
        {
            var (sound, off) = (1.0, 0.0);
            for (var cause = 0; cause < member.Reach.Length; cause++)
            {
                var reach = member.Reach[cause];
                var share = reach.Straight * phi[cause];
                for (var at = 0; at < reach.Packets.Length && way != 0; at++)
                {
                    var fate = Fates.IndexOf((cause, reach.Packets[at].Packet));
                    if (fate >= 0 && (way >> fate & 1) == 1) share += reach.Packets[at].Part;
                }

                share = Math.Min(1, share);
                off += sound * share * member.OffBy[cause];
                sound *= 1 - share;
            }

            return (sound, off);
        }
    }
}
