namespace LibraryDesk.Benchmarks.Sessions;

/// <summary>
/// The key line of IBPGR 1983 (AGPG/IBPGR/82/12) to the five cultivated peppers, walked as printed: couplets 1 to 5 as seen in a restatement, 6 to 9 from memory.
/// </summary>
internal static class PrintedKey
{
    /// <summary>The species the key gives, and how many different things had to be looked at.</summary>
    public static (string Species, int Looks) Walk(SimulatedPlant plant)
    {
        var looked = new HashSet<string>();
        string See(string trait)
        {
            looked.Add(trait);
            return plant.State(trait);
        }

        bool IsPurple() => See("corolla_colour").StartsWith("purple", StringComparison.Ordinal);
        bool IsSolitary() => See("flowers_per_axil") == "one";
        string Key()
        {
            if (See("seed_colour") != "straw" && IsPurple()) return "capsicum-pubescens";
            if (See("corolla_spots") != "absent") return "capsicum-baccatum";
            if (IsPurple()) return IsSolitary() ? "capsicum-annuum" : "capsicum-chinense";
            if (See("calyx_annular_constriction") == "present") return "capsicum-chinense";
            if (IsSolitary()) return See("corolla_colour") == "greenish white" && See("pedicel_at_anthesis") == "erect" ? "capsicum-frutescens" : "capsicum-annuum";
            if (See("corolla_colour") == "white") return "capsicum-annuum";
            return See("pedicel_at_anthesis") == "erect" ? "capsicum-frutescens" : "capsicum-chinense";
        }

        return (Key(), looked.Count);
    }
}
