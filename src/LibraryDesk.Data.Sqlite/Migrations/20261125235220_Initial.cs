using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LibraryDesk.Data.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "accessions",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    code = table.Column<string>(type: "TEXT", maxLength: 11, nullable: false),
                    donor_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    library = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true),
                    received_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    species = table.Column<string>(type: "TEXT", maxLength: 80, nullable: true),
                    declared_name = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true),
                    source = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    harvest_year = table.Column<int>(type: "INTEGER", nullable: true),
                    unit = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    received = table.Column<long>(type: "INTEGER", nullable: false),
                    stock = table.Column<long>(type: "INTEGER", nullable: false),
                    thousand_seed_milligrams = table.Column<long>(type: "INTEGER", nullable: true),
                    is_void = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_accessions", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "asp_net_roles",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    normalized_name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    concurrency_stamp = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asp_net_roles", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "asp_net_users",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    display_name = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    search_name = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    joined_at = table.Column<long>(type: "INTEGER", nullable: false),
                    erased_at = table.Column<long>(type: "INTEGER", nullable: true),
                    user_name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    normalized_user_name = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    email = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    normalized_email = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    email_confirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    password_hash = table.Column<string>(type: "TEXT", nullable: true),
                    security_stamp = table.Column<string>(type: "TEXT", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "TEXT", nullable: true),
                    phone_number = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "INTEGER", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    lockout_end = table.Column<long>(type: "INTEGER", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "INTEGER", nullable: false),
                    access_failed_count = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asp_net_users", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "calendar_links",
                columns: table => new
                {
                    person_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    key_hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    made_at = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_calendar_links", x => x.person_id);
                });

            migrationBuilder.CreateTable(
                name: "cases",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    title = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false),
                    guide_id = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    guide_version = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    state = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    specimen = table.Column<string>(type: "TEXT", maxLength: 12, nullable: false),
                    owner_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    filed_for_by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    guest_email = table.Column<string>(type: "TEXT", maxLength: 256, nullable: true),
                    guest_language = table.Column<string>(type: "TEXT", maxLength: 8, nullable: true),
                    guest_key_hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    guest_key_locked = table.Column<string>(type: "TEXT", maxLength: 600, nullable: true),
                    batch_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    round = table.Column<int>(type: "INTEGER", nullable: false),
                    created_at = table.Column<long>(type: "INTEGER", nullable: false),
                    filed_at = table.Column<long>(type: "INTEGER", nullable: true),
                    state_since = table.Column<long>(type: "INTEGER", nullable: false),
                    closing_note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    revision = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_cases", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "code_series",
                columns: table => new
                {
                    kind = table.Column<string>(type: "TEXT", maxLength: 1, nullable: false),
                    year = table.Column<int>(type: "INTEGER", nullable: false),
                    last_number = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_code_series", x => new { x.kind, x.year });
                });

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    friendly_name = table.Column<string>(type: "TEXT", nullable: true),
                    xml = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "donors",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    name = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false),
                    contact = table.Column<string>(type: "TEXT", maxLength: 300, nullable: true),
                    note = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: true),
                    erased_at = table.Column<long>(type: "INTEGER", nullable: true),
                    revision = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_donors", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "germination_tests",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    lot_id = table.Column<long>(type: "INTEGER", nullable: false),
                    read_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    replicates = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    sown = table.Column<int>(type: "INTEGER", nullable: false),
                    germinated = table.Column<int>(type: "INTEGER", nullable: false),
                    days = table.Column<int>(type: "INTEGER", nullable: true),
                    is_void = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_germination_tests", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "grow_outs",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    from_id = table.Column<long>(type: "INTEGER", nullable: false),
                    loan_id = table.Column<long>(type: "INTEGER", nullable: true),
                    grower_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    sown_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    sown = table.Column<long>(type: "INTEGER", nullable: false),
                    sown_unit = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    plants_grown = table.Column<int>(type: "INTEGER", nullable: true),
                    plants_saved_from = table.Column<int>(type: "INTEGER", nullable: true),
                    off_types_seen = table.Column<int>(type: "INTEGER", nullable: true),
                    off_types_removed = table.Column<int>(type: "INTEGER", nullable: true),
                    isolation = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    nearest_metres = table.Column<int>(type: "INTEGER", nullable: true),
                    others_in_flower = table.Column<bool>(type: "INTEGER", nullable: true),
                    manner = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    harvested_on = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    harvest_unit = table.Column<string>(type: "TEXT", maxLength: 24, nullable: true),
                    harvest = table.Column<long>(type: "INTEGER", nullable: true),
                    stock = table.Column<long>(type: "INTEGER", nullable: true),
                    thousand_seed_milligrams = table.Column<long>(type: "INTEGER", nullable: true),
                    is_void = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_grow_outs", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "guide_drafts",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    guide_id = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    base_version = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    learns = table.Column<bool>(type: "INTEGER", nullable: false),
                    started_at = table.Column<long>(type: "INTEGER", nullable: false),
                    changed_at = table.Column<long>(type: "INTEGER", nullable: false),
                    changed_by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    revision = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_guide_drafts", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "guide_versions",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    guide_id = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    version = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    json = table.Column<string>(type: "TEXT", nullable: false),
                    published_at = table.Column<long>(type: "INTEGER", nullable: false),
                    published_by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_guide_versions", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "holds",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    node_id = table.Column<long>(type: "INTEGER", nullable: false),
                    reason = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    held_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    released_on = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    released_why = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: true),
                    is_void = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_holds", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "invitations",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    email = table.Column<string>(type: "TEXT", maxLength: 256, nullable: false),
                    role = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    code_hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    invited_by_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    created_at = table.Column<long>(type: "INTEGER", nullable: false),
                    expires_at = table.Column<long>(type: "INTEGER", nullable: false),
                    used_at = table.Column<long>(type: "INTEGER", nullable: true),
                    withdrawn_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_invitations", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "ledger_entries",
                columns: table => new
                {
                    sequence = table.Column<long>(type: "INTEGER", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    actor_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    subjects = table.Column<string>(type: "TEXT", nullable: false),
                    payload = table.Column<string>(type: "TEXT", nullable: false),
                    previous_hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ledger_entries", x => x.sequence);
                });

            migrationBuilder.CreateTable(
                name: "ledger_head",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false),
                    height = table.Column<long>(type: "INTEGER", nullable: false),
                    hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    last_seed_id = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ledger_head", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "ledger_subjects",
                columns: table => new
                {
                    node_id = table.Column<long>(type: "INTEGER", nullable: false),
                    sequence = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ledger_subjects", x => new { x.node_id, x.sequence });
                });

            migrationBuilder.CreateTable(
                name: "library_settings",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false),
                    name = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    tagline = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    code_prefix = table.Column<string>(type: "TEXT", maxLength: 3, nullable: false),
                    opinions_needed = table.Column<int>(type: "INTEGER", nullable: false),
                    sign_up_open = table.Column<bool>(type: "INTEGER", nullable: false),
                    sharing_notice = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    local_rules_url = table.Column<string>(type: "TEXT", maxLength: 500, nullable: false),
                    public_address = table.Column<string>(type: "TEXT", maxLength: 300, nullable: false),
                    intake_hold_days = table.Column<int>(type: "INTEGER", nullable: false),
                    isolation_topic = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    regrow_below_percent = table.Column<int>(type: "INTEGER", nullable: false),
                    regrow_of_initial = table.Column<bool>(type: "INTEGER", nullable: false),
                    first_test_days = table.Column<int>(type: "INTEGER", nullable: false),
                    test_every_days = table.Column<int>(type: "INTEGER", nullable: false),
                    recount_every_days = table.Column<int>(type: "INTEGER", nullable: false),
                    regrow_below_seeds = table.Column<int>(type: "INTEGER", nullable: false),
                    stores = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: false),
                    set_up_code_hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: true),
                    demo_loaded_at = table.Column<long>(type: "INTEGER", nullable: true),
                    revision = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_library_settings", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "lineage_edges",
                columns: table => new
                {
                    parent_id = table.Column<long>(type: "INTEGER", nullable: false),
                    child_id = table.Column<long>(type: "INTEGER", nullable: false),
                    share = table.Column<double>(type: "REAL", nullable: false),
                    seed_count = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_lineage_edges", x => new { x.parent_id, x.child_id });
                });

            migrationBuilder.CreateTable(
                name: "loans",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    packet_id = table.Column<long>(type: "INTEGER", nullable: false),
                    borrower_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    lent_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    due_on = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    ending = table.Column<string>(type: "TEXT", maxLength: 24, nullable: true),
                    ended_on = table.Column<DateOnly>(type: "TEXT", nullable: true),
                    is_void = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_loans", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "lots",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    code = table.Column<string>(type: "TEXT", maxLength: 11, nullable: false),
                    origin = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    species = table.Column<string>(type: "TEXT", maxLength: 80, nullable: true),
                    made_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    unit = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    made = table.Column<long>(type: "INTEGER", nullable: false),
                    stock = table.Column<long>(type: "INTEGER", nullable: false),
                    thousand_seed_milligrams = table.Column<long>(type: "INTEGER", nullable: true),
                    place = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true),
                    is_void = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_lots", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "name_claims",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    node_id = table.Column<long>(type: "INTEGER", nullable: false),
                    species = table.Column<string>(type: "TEXT", maxLength: 80, nullable: true),
                    variety = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true),
                    grounds = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    claimed_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    case_number = table.Column<string>(type: "TEXT", maxLength: 24, nullable: true),
                    link = table.Column<string>(type: "TEXT", maxLength: 24, nullable: true),
                    origin_id = table.Column<long>(type: "INTEGER", nullable: true),
                    fits = table.Column<bool>(type: "INTEGER", nullable: true),
                    guide_version = table.Column<string>(type: "TEXT", maxLength: 80, nullable: true),
                    is_withdrawn = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_name_claims", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "notice_choices",
                columns: table => new
                {
                    person_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 12, nullable: false),
                    way = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_notice_choices", x => new { x.person_id, x.kind });
                });

            migrationBuilder.CreateTable(
                name: "notices",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    person_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 12, nullable: false),
                    about = table.Column<string>(type: "TEXT", maxLength: 120, nullable: false),
                    heading = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    text = table.Column<string>(type: "TEXT", maxLength: 1200, nullable: false),
                    address = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    read_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_notices", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "outgoing_mail",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    to = table.Column<string>(type: "TEXT", maxLength: 256, nullable: false),
                    subject = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    body = table.Column<string>(type: "TEXT", maxLength: 8000, nullable: false),
                    created_at = table.Column<long>(type: "INTEGER", nullable: false),
                    due_at = table.Column<long>(type: "INTEGER", nullable: false),
                    sent_at = table.Column<long>(type: "INTEGER", nullable: true),
                    tries = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_outgoing_mail", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "packets",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    code = table.Column<string>(type: "TEXT", maxLength: 13, nullable: false),
                    lot_id = table.Column<long>(type: "INTEGER", nullable: false),
                    packing = table.Column<long>(type: "INTEGER", nullable: false),
                    packed_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    unit = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    held = table.Column<long>(type: "INTEGER", nullable: false),
                    stock = table.Column<long>(type: "INTEGER", nullable: false),
                    standing = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    holder_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    loan_id = table.Column<long>(type: "INTEGER", nullable: true),
                    request_id = table.Column<long>(type: "INTEGER", nullable: true),
                    place = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_packets", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "recall_answers",
                columns: table => new
                {
                    hold_id = table.Column<long>(type: "INTEGER", nullable: false),
                    packet_id = table.Column<long>(type: "INTEGER", nullable: false),
                    person_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    told_at = table.Column<long>(type: "INTEGER", nullable: true),
                    answer = table.Column<string>(type: "TEXT", maxLength: 24, nullable: true),
                    answered_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recall_answers", x => new { x.hold_id, x.packet_id });
                });

            migrationBuilder.CreateTable(
                name: "recall_packets",
                columns: table => new
                {
                    hold_id = table.Column<long>(type: "INTEGER", nullable: false),
                    packet_id = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recall_packets", x => new { x.hold_id, x.packet_id });
                });

            migrationBuilder.CreateTable(
                name: "recalls",
                columns: table => new
                {
                    hold_id = table.Column<long>(type: "INTEGER", nullable: false),
                    node_id = table.Column<long>(type: "INTEGER", nullable: false),
                    recalled_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    reason = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recalls", x => x.hold_id);
                });

            migrationBuilder.CreateTable(
                name: "search_lots",
                columns: table => new
                {
                    lot_id = table.Column<long>(type: "INTEGER", nullable: false),
                    name_id = table.Column<long>(type: "INTEGER", nullable: false),
                    year = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_search_lots", x => x.lot_id);
                });

            migrationBuilder.CreateTable(
                name: "search_names",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    species = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    normalized_name = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false),
                    display = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_search_names", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "search_postings",
                columns: table => new
                {
                    word = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 1, nullable: false),
                    @ref = table.Column<long>(name: "ref", type: "INTEGER", nullable: false),
                    weight = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_search_postings", x => new { x.word, x.kind, x.@ref });
                });

            migrationBuilder.CreateTable(
                name: "search_trigrams",
                columns: table => new
                {
                    trigram = table.Column<string>(type: "TEXT", maxLength: 3, nullable: false),
                    word = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_search_trigrams", x => new { x.trigram, x.word });
                });

            migrationBuilder.CreateTable(
                name: "seed_requests",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false),
                    lot_id = table.Column<long>(type: "INTEGER", nullable: false),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    picked_packet_id = table.Column<long>(type: "INTEGER", nullable: true),
                    loan_id = table.Column<long>(type: "INTEGER", nullable: true),
                    is_void = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_seed_requests", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "seed_transfers",
                columns: table => new
                {
                    entry = table.Column<long>(type: "INTEGER", nullable: false),
                    node_id = table.Column<long>(type: "INTEGER", nullable: false),
                    unit = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    amount = table.Column<long>(type: "INTEGER", nullable: false),
                    library = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false),
                    sent_on = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    is_void = table.Column<bool>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_seed_transfers", x => x.entry);
                });

            migrationBuilder.CreateTable(
                name: "varieties",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    name = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false),
                    normalized_name = table.Column<string>(type: "TEXT", maxLength: 160, nullable: false),
                    species = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    synonyms = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: false),
                    breeding = table.Column<string>(type: "TEXT", maxLength: 24, nullable: false),
                    description = table.Column<string>(type: "TEXT", maxLength: 4000, nullable: false),
                    traits = table.Column<string>(type: "TEXT", maxLength: 4000, nullable: false),
                    source = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    revision = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_varieties", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "asp_net_role_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    role_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    claim_type = table.Column<string>(type: "TEXT", nullable: true),
                    claim_value = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asp_net_role_claims", x => x.id);
                    table.ForeignKey(
                        name: "FK_asp_net_role_claims_asp_net_roles_role_id",
                        column: x => x.role_id,
                        principalTable: "asp_net_roles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "asp_net_user_claims",
                columns: table => new
                {
                    id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    user_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    claim_type = table.Column<string>(type: "TEXT", nullable: true),
                    claim_value = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asp_net_user_claims", x => x.id);
                    table.ForeignKey(
                        name: "FK_asp_net_user_claims_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "asp_net_users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "asp_net_user_logins",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "TEXT", maxLength: 128, nullable: false),
                    provider_key = table.Column<string>(type: "TEXT", maxLength: 128, nullable: false),
                    provider_display_name = table.Column<string>(type: "TEXT", nullable: true),
                    user_id = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asp_net_user_logins", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "FK_asp_net_user_logins_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "asp_net_users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "asp_net_user_passkeys",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "BLOB", maxLength: 1024, nullable: false),
                    user_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Data = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asp_net_user_passkeys", x => x.credential_id);
                    table.ForeignKey(
                        name: "FK_asp_net_user_passkeys_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "asp_net_users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "asp_net_user_roles",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    role_id = table.Column<Guid>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asp_net_user_roles", x => new { x.user_id, x.role_id });
                    table.ForeignKey(
                        name: "FK_asp_net_user_roles_asp_net_roles_role_id",
                        column: x => x.role_id,
                        principalTable: "asp_net_roles",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_asp_net_user_roles_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "asp_net_users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "asp_net_user_tokens",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    login_provider = table.Column<string>(type: "TEXT", maxLength: 128, nullable: false),
                    name = table.Column<string>(type: "TEXT", maxLength: 128, nullable: false),
                    value = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_asp_net_user_tokens", x => new { x.user_id, x.login_provider, x.name });
                    table.ForeignKey(
                        name: "FK_asp_net_user_tokens_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "asp_net_users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "case_events",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    detail = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: true),
                    at = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_case_events", x => x.id);
                    table.ForeignKey(
                        name: "FK_case_events_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "determinations",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    round = table.Column<int>(type: "INTEGER", nullable: false),
                    taxon = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    qualifier = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    variety_name = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true),
                    origin_packet_code = table.Column<string>(type: "TEXT", maxLength: 24, nullable: true),
                    alone_by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    grounds = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: false),
                    guide_id = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    guide_version = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    odds_json = table.Column<string>(type: "TEXT", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    superseded_at = table.Column<long>(type: "INTEGER", nullable: true),
                    claim_sequence = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_determinations", x => x.id);
                    table.ForeignKey(
                        name: "FK_determinations_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "look_requests",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    trait_id = table.Column<string>(type: "TEXT", maxLength: 60, nullable: true),
                    part_id = table.Column<string>(type: "TEXT", maxLength: 40, nullable: true),
                    message = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    met_at = table.Column<long>(type: "INTEGER", nullable: true),
                    withdrawn_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_look_requests", x => x.id);
                    table.ForeignKey(
                        name: "FK_look_requests_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "looks",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    date = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    parts = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    created_at = table.Column<long>(type: "INTEGER", nullable: false),
                    revision = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_looks", x => x.id);
                    table.ForeignKey(
                        name: "FK_looks_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "opinions",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    round = table.Column<int>(type: "INTEGER", nullable: false),
                    volunteer_id = table.Column<Guid>(type: "TEXT", nullable: false),
                    sealed_at = table.Column<long>(type: "INTEGER", nullable: false),
                    sealed_taxon = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    sealed_qualifier = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    sealed_in_twenty = table.Column<int>(type: "INTEGER", nullable: true),
                    sealed_note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    final_at = table.Column<long>(type: "INTEGER", nullable: true),
                    final_taxon = table.Column<string>(type: "TEXT", maxLength: 80, nullable: true),
                    final_qualifier = table.Column<string>(type: "TEXT", maxLength: 8, nullable: true),
                    final_note = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: true),
                    revision = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_opinions", x => x.id);
                    table.ForeignKey(
                        name: "FK_opinions_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "origin_clues",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 12, nullable: false),
                    packet_code = table.Column<string>(type: "TEXT", maxLength: 24, nullable: true),
                    tied = table.Column<bool>(type: "INTEGER", nullable: false),
                    seeds_sown = table.Column<int>(type: "INTEGER", nullable: true),
                    note = table.Column<string>(type: "TEXT", maxLength: 1000, nullable: true),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    taken_back_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_origin_clues", x => x.id);
                    table.ForeignKey(
                        name: "FK_origin_clues_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "season_reminders",
                columns: table => new
                {
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    stage = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    look = table.Column<int>(type: "INTEGER", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_season_reminders", x => new { x.case_id, x.stage, x.look });
                    table.ForeignKey(
                        name: "FK_season_reminders_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "suggestions",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    taxon = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    form_id = table.Column<string>(type: "TEXT", maxLength: 120, nullable: true),
                    variety_name = table.Column<string>(type: "TEXT", maxLength: 160, nullable: true),
                    reason = table.Column<string>(type: "TEXT", maxLength: 2000, nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    withdrawn_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_suggestions", x => x.id);
                    table.ForeignKey(
                        name: "FK_suggestions_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "guide_edits",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    draft_id = table.Column<int>(type: "INTEGER", nullable: false),
                    number = table.Column<int>(type: "INTEGER", nullable: false),
                    json = table.Column<string>(type: "TEXT", nullable: false),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    undone_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_guide_edits", x => x.id);
                    table.ForeignKey(
                        name: "FK_guide_edits_guide_drafts_draft_id",
                        column: x => x.draft_id,
                        principalTable: "guide_drafts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "guide_reruns",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    draft_id = table.Column<int>(type: "INTEGER", nullable: false),
                    fingerprint = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    before_version = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    done = table.Column<int>(type: "INTEGER", nullable: false),
                    of = table.Column<int>(type: "INTEGER", nullable: false),
                    started_at = table.Column<long>(type: "INTEGER", nullable: false),
                    moved_at = table.Column<long>(type: "INTEGER", nullable: false),
                    finished_at = table.Column<long>(type: "INTEGER", nullable: true),
                    result_json = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_guide_reruns", x => x.id);
                    table.ForeignKey(
                        name: "FK_guide_reruns_guide_drafts_draft_id",
                        column: x => x.draft_id,
                        principalTable: "guide_drafts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "variety_photos",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    variety_id = table.Column<long>(type: "INTEGER", nullable: false),
                    store_key = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    width = table.Column<int>(type: "INTEGER", nullable: false),
                    height = table.Column<int>(type: "INTEGER", nullable: false),
                    bytes = table.Column<long>(type: "INTEGER", nullable: false),
                    caption = table.Column<string>(type: "TEXT", maxLength: 300, nullable: false),
                    is_drawing = table.Column<bool>(type: "INTEGER", nullable: false),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    removed_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_variety_photos", x => x.id);
                    table.ForeignKey(
                        name: "FK_variety_photos_varieties_variety_id",
                        column: x => x.variety_id,
                        principalTable: "varieties",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "answers",
                columns: table => new
                {
                    id = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    look_id = table.Column<long>(type: "INTEGER", nullable: false),
                    trait_id = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 12, nullable: false),
                    states = table.Column<string>(type: "TEXT", maxLength: 400, nullable: false),
                    low = table.Column<double>(type: "REAL", nullable: true),
                    high = table.Column<double>(type: "REAL", nullable: true),
                    sureness = table.Column<string>(type: "TEXT", maxLength: 8, nullable: false),
                    person_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    by_desk = table.Column<bool>(type: "INTEGER", nullable: false),
                    contests_answer_id = table.Column<long>(type: "INTEGER", nullable: true),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    taken_back_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_answers", x => x.id);
                    table.ForeignKey(
                        name: "FK_answers_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_answers_looks_look_id",
                        column: x => x.look_id,
                        principalTable: "looks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "photos",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "TEXT", nullable: false),
                    case_id = table.Column<long>(type: "INTEGER", nullable: false),
                    look_id = table.Column<long>(type: "INTEGER", nullable: false),
                    part = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    store_key = table.Column<string>(type: "TEXT", maxLength: 80, nullable: false),
                    width = table.Column<int>(type: "INTEGER", nullable: false),
                    height = table.Column<int>(type: "INTEGER", nullable: false),
                    bytes = table.Column<long>(type: "INTEGER", nullable: false),
                    caption = table.Column<string>(type: "TEXT", maxLength: 300, nullable: true),
                    is_drawing = table.Column<bool>(type: "INTEGER", nullable: false),
                    by_id = table.Column<Guid>(type: "TEXT", nullable: true),
                    at = table.Column<long>(type: "INTEGER", nullable: false),
                    removed_at = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photos", x => x.id);
                    table.ForeignKey(
                        name: "FK_photos_cases_case_id",
                        column: x => x.case_id,
                        principalTable: "cases",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "FK_photos_looks_look_id",
                        column: x => x.look_id,
                        principalTable: "looks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_accessions_code",
                table: "accessions",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_accessions_donor_id",
                table: "accessions",
                column: "donor_id");

            migrationBuilder.CreateIndex(
                name: "IX_answers_case_id",
                table: "answers",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_answers_case_id_trait_id",
                table: "answers",
                columns: new[] { "case_id", "trait_id" });

            migrationBuilder.CreateIndex(
                name: "IX_answers_look_id",
                table: "answers",
                column: "look_id");

            migrationBuilder.CreateIndex(
                name: "IX_asp_net_role_claims_role_id",
                table: "asp_net_role_claims",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "RoleNameIndex",
                table: "asp_net_roles",
                column: "normalized_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_asp_net_user_claims_user_id",
                table: "asp_net_user_claims",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "IX_asp_net_user_logins_user_id",
                table: "asp_net_user_logins",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "IX_asp_net_user_passkeys_user_id",
                table: "asp_net_user_passkeys",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "IX_asp_net_user_roles_role_id",
                table: "asp_net_user_roles",
                column: "role_id");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "asp_net_users",
                column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "IX_asp_net_users_search_name",
                table: "asp_net_users",
                column: "search_name");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "asp_net_users",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_calendar_links_key_hash",
                table: "calendar_links",
                column: "key_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_case_events_case_id",
                table: "case_events",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_cases_batch_id",
                table: "cases",
                column: "batch_id");

            migrationBuilder.CreateIndex(
                name: "IX_cases_guest_key_hash",
                table: "cases",
                column: "guest_key_hash");

            migrationBuilder.CreateIndex(
                name: "IX_cases_owner_id",
                table: "cases",
                column: "owner_id");

            migrationBuilder.CreateIndex(
                name: "IX_cases_state_state_since",
                table: "cases",
                columns: new[] { "state", "state_since" });

            migrationBuilder.CreateIndex(
                name: "IX_determinations_case_id",
                table: "determinations",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_determinations_case_id_round",
                table: "determinations",
                columns: new[] { "case_id", "round" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_donors_name",
                table: "donors",
                column: "name");

            migrationBuilder.CreateIndex(
                name: "IX_germination_tests_lot_id_read_on",
                table: "germination_tests",
                columns: new[] { "lot_id", "read_on" });

            migrationBuilder.CreateIndex(
                name: "IX_grow_outs_from_id",
                table: "grow_outs",
                column: "from_id");

            migrationBuilder.CreateIndex(
                name: "IX_grow_outs_grower_id",
                table: "grow_outs",
                column: "grower_id");

            migrationBuilder.CreateIndex(
                name: "IX_grow_outs_loan_id",
                table: "grow_outs",
                column: "loan_id");

            migrationBuilder.CreateIndex(
                name: "IX_guide_drafts_guide_id",
                table: "guide_drafts",
                column: "guide_id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_guide_edits_draft_id_number",
                table: "guide_edits",
                columns: new[] { "draft_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_guide_reruns_draft_id",
                table: "guide_reruns",
                column: "draft_id");

            migrationBuilder.CreateIndex(
                name: "IX_guide_versions_guide_id_version",
                table: "guide_versions",
                columns: new[] { "guide_id", "version" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_holds_node_id",
                table: "holds",
                column: "node_id");

            migrationBuilder.CreateIndex(
                name: "IX_invitations_code_hash",
                table: "invitations",
                column: "code_hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_invitations_email",
                table: "invitations",
                column: "email");

            migrationBuilder.CreateIndex(
                name: "IX_ledger_entries_kind_sequence",
                table: "ledger_entries",
                columns: new[] { "kind", "sequence" });

            migrationBuilder.CreateIndex(
                name: "IX_ledger_subjects_sequence",
                table: "ledger_subjects",
                column: "sequence");

            migrationBuilder.CreateIndex(
                name: "IX_lineage_edges_child_id_parent_id",
                table: "lineage_edges",
                columns: new[] { "child_id", "parent_id" });

            migrationBuilder.CreateIndex(
                name: "IX_loans_borrower_id_lent_on",
                table: "loans",
                columns: new[] { "borrower_id", "lent_on" });

            migrationBuilder.CreateIndex(
                name: "IX_loans_ended_on_due_on",
                table: "loans",
                columns: new[] { "ended_on", "due_on" });

            migrationBuilder.CreateIndex(
                name: "IX_loans_packet_id",
                table: "loans",
                column: "packet_id");

            migrationBuilder.CreateIndex(
                name: "IX_look_requests_case_id",
                table: "look_requests",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_looks_case_id",
                table: "looks",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_looks_case_id_number",
                table: "looks",
                columns: new[] { "case_id", "number" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_lots_code",
                table: "lots",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_lots_made_on",
                table: "lots",
                column: "made_on");

            migrationBuilder.CreateIndex(
                name: "IX_name_claims_node_id",
                table: "name_claims",
                column: "node_id");

            migrationBuilder.CreateIndex(
                name: "IX_name_claims_variety",
                table: "name_claims",
                column: "variety");

            migrationBuilder.CreateIndex(
                name: "IX_notices_person_id_about",
                table: "notices",
                columns: new[] { "person_id", "about" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_notices_person_id_read_at",
                table: "notices",
                columns: new[] { "person_id", "read_at" });

            migrationBuilder.CreateIndex(
                name: "IX_opinions_case_id",
                table: "opinions",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_opinions_case_id_round_volunteer_id",
                table: "opinions",
                columns: new[] { "case_id", "round", "volunteer_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_origin_clues_case_id",
                table: "origin_clues",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_origin_clues_packet_code",
                table: "origin_clues",
                column: "packet_code");

            migrationBuilder.CreateIndex(
                name: "IX_outgoing_mail_sent_at_due_at",
                table: "outgoing_mail",
                columns: new[] { "sent_at", "due_at" });

            migrationBuilder.CreateIndex(
                name: "IX_packets_code",
                table: "packets",
                column: "code",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_packets_holder_id",
                table: "packets",
                column: "holder_id");

            migrationBuilder.CreateIndex(
                name: "IX_packets_lot_id_standing",
                table: "packets",
                columns: new[] { "lot_id", "standing" });

            migrationBuilder.CreateIndex(
                name: "IX_photos_case_id",
                table: "photos",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_photos_look_id",
                table: "photos",
                column: "look_id");

            migrationBuilder.CreateIndex(
                name: "IX_recall_answers_person_id",
                table: "recall_answers",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "IX_recall_packets_packet_id",
                table: "recall_packets",
                column: "packet_id");

            migrationBuilder.CreateIndex(
                name: "IX_recalls_node_id",
                table: "recalls",
                column: "node_id");

            migrationBuilder.CreateIndex(
                name: "IX_search_lots_name_id_lot_id",
                table: "search_lots",
                columns: new[] { "name_id", "lot_id" });

            migrationBuilder.CreateIndex(
                name: "IX_search_lots_year_lot_id",
                table: "search_lots",
                columns: new[] { "year", "lot_id" });

            migrationBuilder.CreateIndex(
                name: "IX_search_names_normalized_name_species",
                table: "search_names",
                columns: new[] { "normalized_name", "species" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_search_postings_kind_ref",
                table: "search_postings",
                columns: new[] { "kind", "ref" });

            migrationBuilder.CreateIndex(
                name: "IX_search_trigrams_word",
                table: "search_trigrams",
                column: "word");

            migrationBuilder.CreateIndex(
                name: "IX_seed_requests_by_id",
                table: "seed_requests",
                column: "by_id");

            migrationBuilder.CreateIndex(
                name: "IX_seed_requests_lot_id",
                table: "seed_requests",
                column: "lot_id");

            migrationBuilder.CreateIndex(
                name: "IX_seed_transfers_node_id",
                table: "seed_transfers",
                column: "node_id");

            migrationBuilder.CreateIndex(
                name: "IX_suggestions_case_id",
                table: "suggestions",
                column: "case_id");

            migrationBuilder.CreateIndex(
                name: "IX_varieties_species_normalized_name",
                table: "varieties",
                columns: new[] { "species", "normalized_name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_variety_photos_store_key",
                table: "variety_photos",
                column: "store_key");

            migrationBuilder.CreateIndex(
                name: "IX_variety_photos_variety_id",
                table: "variety_photos",
                column: "variety_id");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "accessions");

            migrationBuilder.DropTable(
                name: "answers");

            migrationBuilder.DropTable(
                name: "asp_net_role_claims");

            migrationBuilder.DropTable(
                name: "asp_net_user_claims");

            migrationBuilder.DropTable(
                name: "asp_net_user_logins");

            migrationBuilder.DropTable(
                name: "asp_net_user_passkeys");

            migrationBuilder.DropTable(
                name: "asp_net_user_roles");

            migrationBuilder.DropTable(
                name: "asp_net_user_tokens");

            migrationBuilder.DropTable(
                name: "calendar_links");

            migrationBuilder.DropTable(
                name: "case_events");

            migrationBuilder.DropTable(
                name: "code_series");

            migrationBuilder.DropTable(
                name: "data_protection_keys");

            migrationBuilder.DropTable(
                name: "determinations");

            migrationBuilder.DropTable(
                name: "donors");

            migrationBuilder.DropTable(
                name: "germination_tests");

            migrationBuilder.DropTable(
                name: "grow_outs");

            migrationBuilder.DropTable(
                name: "guide_edits");

            migrationBuilder.DropTable(
                name: "guide_reruns");

            migrationBuilder.DropTable(
                name: "guide_versions");

            migrationBuilder.DropTable(
                name: "holds");

            migrationBuilder.DropTable(
                name: "invitations");

            migrationBuilder.DropTable(
                name: "ledger_entries");

            migrationBuilder.DropTable(
                name: "ledger_head");

            migrationBuilder.DropTable(
                name: "ledger_subjects");

            migrationBuilder.DropTable(
                name: "library_settings");

            migrationBuilder.DropTable(
                name: "lineage_edges");

            migrationBuilder.DropTable(
                name: "loans");

            migrationBuilder.DropTable(
                name: "look_requests");

            migrationBuilder.DropTable(
                name: "lots");

            migrationBuilder.DropTable(
                name: "name_claims");

            migrationBuilder.DropTable(
                name: "notice_choices");

            migrationBuilder.DropTable(
                name: "notices");

            migrationBuilder.DropTable(
                name: "opinions");

            migrationBuilder.DropTable(
                name: "origin_clues");

            migrationBuilder.DropTable(
                name: "outgoing_mail");

            migrationBuilder.DropTable(
                name: "packets");

            migrationBuilder.DropTable(
                name: "photos");

            migrationBuilder.DropTable(
                name: "recall_answers");

            migrationBuilder.DropTable(
                name: "recall_packets");

            migrationBuilder.DropTable(
                name: "recalls");

            migrationBuilder.DropTable(
                name: "search_lots");

            migrationBuilder.DropTable(
                name: "search_names");

            migrationBuilder.DropTable(
                name: "search_postings");

            migrationBuilder.DropTable(
                name: "search_trigrams");

            migrationBuilder.DropTable(
                name: "season_reminders");

            migrationBuilder.DropTable(
                name: "seed_requests");

            migrationBuilder.DropTable(
                name: "seed_transfers");

            migrationBuilder.DropTable(
                name: "suggestions");

            migrationBuilder.DropTable(
                name: "variety_photos");

            migrationBuilder.DropTable(
                name: "asp_net_roles");

            migrationBuilder.DropTable(
                name: "asp_net_users");

            migrationBuilder.DropTable(
                name: "guide_drafts");

            migrationBuilder.DropTable(
                name: "looks");

            migrationBuilder.DropTable(
                name: "varieties");

            migrationBuilder.DropTable(
                name: "cases");
        }
    }
}
