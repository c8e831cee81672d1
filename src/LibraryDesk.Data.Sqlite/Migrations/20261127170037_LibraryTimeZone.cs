using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LibraryDesk.Data.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class LibraryTimeZone : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "time_zone",
                table: "library_settings",
                type: "TEXT",
                nullable: false,
                defaultValue: "");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "time_zone",
                table: "library_settings");
        }
    }
}
