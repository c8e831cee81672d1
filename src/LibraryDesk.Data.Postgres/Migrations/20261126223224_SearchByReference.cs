using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LibraryDesk.Data.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class SearchByReference : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_search_postings_kind_ref",
                table: "search_postings");

            migrationBuilder.CreateIndex(
                name: "IX_search_postings_ref_kind",
                table: "search_postings",
                columns: new[] { "ref", "kind" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_search_postings_ref_kind",
                table: "search_postings");

            migrationBuilder.CreateIndex(
                name: "IX_search_postings_kind_ref",
                table: "search_postings",
                columns: new[] { "kind", "ref" });
        }
    }
}
