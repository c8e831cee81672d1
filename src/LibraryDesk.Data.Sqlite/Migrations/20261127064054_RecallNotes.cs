using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LibraryDesk.Data.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class RecallNotes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "note",
                table: "recall_answers",
                type: "TEXT",
                maxLength: 1000,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "recall_libraries",
                columns: table => new
                {
                    hold_id = table.Column<long>(type: "INTEGER", nullable: false),
                    entry = table.Column<long>(type: "INTEGER", nullable: false),
                    told_at = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_recall_libraries", x => new { x.hold_id, x.entry });
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "recall_libraries");

            migrationBuilder.DropColumn(
                name: "note",
                table: "recall_answers");
        }
    }
}
