namespace LibraryDesk.Identification.Tests.Guides;

/// <summary>
/// Root-to-leaf paths of published keys to the cultivated peppers, restated as trait answers. Leads whose wording was only remembered are left out.
/// K1: the key line of IBPGR 1983, AGPG/IBPGR/82/12 (attribution from memory), couplets 1-5. K2: P.G. Smith, Key to Pepper Species, undated handout.
/// K3: Flora of Bangladesh, genus Capsicum, couplet 1. K4: Barboza et al. 2022, PhytoKeys 200, treatments 11 and 19, Discussion.
/// K5: Carvalho and Bianchetti 2008, as reproduced by Embrapa, couplet 1.
/// </summary>
internal static class PublishedKeyPaths
{
    public const string Five = "capsicum-annuum,capsicum-baccatum,capsicum-chinense,capsicum-frutescens,capsicum-pubescens";

    /// <summary>The species K2 covers that the guide tabulates.</summary>
    public const string Smith = Five + ",capsicum-chacoense,capsicum-galapagoense,capsicum-eximium";

    public const string AnnuumFrutescens = "capsicum-annuum,capsicum-frutescens";

    public const string ChinenseFrutescens = "capsicum-chinense,capsicum-frutescens";

    /// <summary>Name, candidates the key covers, answers, species it must give.</summary>
    public static readonly string[][] Agreeing =
    [
        ["K1-1", Five, "seed_colour=black; corolla_colour=purple", "capsicum-pubescens"],
        ["K1-1 with the colour as the descriptor names it", Five, "seed_colour=black; corolla_colour=purple with white base", "capsicum-pubescens"],
        ["K1-2", Five, "seed_colour=straw; corolla_spots=green-yellow", "capsicum-baccatum"],
        ["K1-3", Five, "seed_colour=straw; corolla_spots=absent; corolla_colour=purple; flowers_per_axil=one", "capsicum-annuum"],
        ["K1-5", Five, "seed_colour=straw; corolla_spots=absent; corolla_colour=white; calyx_annular_constriction=present", "capsicum-chinense"],
        ["K1-5b", Five, "seed_colour=straw; corolla_spots=absent; corolla_colour=greenish white; calyx_annular_constriction=present", "capsicum-chinense"],
        ["K2-1", Smith, "corolla_spots=absent; corolla_colour=white; anther_colour=pale blue; flowers_per_axil=one; calyx_margin=intermediate; calyx_nerves=prominent", "capsicum-annuum"],
        ["K2-1b", Smith, "corolla_spots=absent; corolla_colour=white; anther_colour=purple; flowers_per_axil=one; calyx_margin=intermediate; calyx_nerves=prominent", "capsicum-annuum"],
        ["K2-2", Smith, "corolla_spots=absent; corolla_colour=white; anther_colour=blue; flowers_per_axil=three or more; calyx_annular_constriction=present", "capsicum-chinense"],
        ["K2-2b", Smith, "corolla_spots=absent; corolla_colour=white; anther_colour=blue; flowers_per_axil=two; calyx_annular_constriction=present", "capsicum-chinense"],
        ["K2-3", Smith, "corolla_spots=absent; corolla_colour=greenish white; anther_colour=blue-grey; flowers_per_axil=three or more; calyx_annular_constriction=absent; calyx_margin=entire; pedicel_at_anthesis=erect", "capsicum-frutescens"],
        ["K2-3b", Smith, "corolla_spots=absent; corolla_colour=greenish white; anther_colour=blue-grey; flowers_per_axil=two; calyx_annular_constriction=absent; calyx_margin=entire; pedicel_at_anthesis=erect", "capsicum-frutescens"],
        ["K2-4", Smith, "corolla_spots=absent; corolla_colour=white; anther_colour=yellow; stem_pubescence=absent; calyx_margin=dentate; calyx_nerves=prominent", "capsicum-chacoense"],
        ["K2-5", Smith, "corolla_spots=absent; corolla_colour=white; anther_colour=yellow; stem_pubescence=dense; calyx_margin=entire", "capsicum-galapagoense"],
        ["K2-6", Smith, "corolla_colour=purple with white base; anther_colour=purple; stem_pubescence=dense; leaf_surface=rugose; seed_colour=black", "capsicum-pubescens"],
        ["K2-7", Smith, "corolla_colour=purple; corolla_spots=green-yellow; anther_colour=yellow; calyx_margin=dentate", "capsicum-eximium"],
        ["K3-1a", AnnuumFrutescens, "flowers_per_axil=one; corolla_colour=white; pedicel_at_anthesis=pendant", "capsicum-annuum"],
        ["K3-1b", AnnuumFrutescens, "flowers_per_axil=one; corolla_colour=white; pedicel_at_anthesis=erect", "capsicum-annuum"],
        ["K3-1c", AnnuumFrutescens, "flowers_per_axil=one; corolla_colour=purple; pedicel_at_anthesis=pendant", "capsicum-annuum"],
        ["K3-2a", AnnuumFrutescens, "flowers_per_axil=two; corolla_colour=greenish white; pedicel_at_anthesis=erect; fruit_position=erect", "capsicum-frutescens"],
        ["K3-2b", AnnuumFrutescens, "flowers_per_axil=three or more; corolla_colour=greenish white; pedicel_at_anthesis=erect; fruit_position=erect", "capsicum-frutescens"],
        ["K4-1", ChinenseFrutescens, "flowers_per_axil=three or more; calyx_annular_constriction=present; fruiting_calyx_shape=discoid; calyx_nerves=prominent", "capsicum-chinense"],
        ["K4-2", ChinenseFrutescens, "flowers_per_axil=three or more; calyx_annular_constriction=absent; fruiting_calyx_shape=cup-shaped; calyx_nerves=immersed; fruit_position=erect; fruit_shape=elongate", "capsicum-frutescens"],
        ["K5-1", Five, "seed_colour=black", "capsicum-pubescens"],
    ];

    /// <summary>
    /// Paths on which key and monograph truly conflict: K1 sends every many-flowered purple pepper to chinense, where Barboza et al. 2022 give a purple
    /// corolla as a rare state of annuum and only spots in chinense. The key's species must stay among the candidates, no more.
    /// </summary>
    public static readonly string[][] InConflict =
    [
        ["K1-4a", Five, "seed_colour=straw; corolla_spots=absent; corolla_colour=purple; flowers_per_axil=two", "capsicum-chinense"],
        ["K1-4b", Five, "seed_colour=straw; corolla_spots=absent; corolla_colour=purple; flowers_per_axil=three or more", "capsicum-chinense"],
    ];

    /// <summary>K2-8 was read in part: its last lines were cut off. The lead is seen, the name after it from memory.</summary>
    public static readonly string[] PartlySeen =
        ["K2-8", Smith, "corolla_colour=white; corolla_spots=green-yellow; anther_colour=yellow; corolla_shape=rotate; seed_colour=straw", "capsicum-baccatum"];
}
