using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LibraryDesk.Data.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class SowingRemindersLoanTerm : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<DateTimeOffset>(
                name: "first_told_at",
                table: "recall_answers",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "loan_days",
                table: "library_settings",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<bool>(
                name: "sown_later",
                table: "grow_outs",
                type: "boolean",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "first_told_at",
                table: "recall_answers");

            migrationBuilder.DropColumn(
                name: "loan_days",
                table: "library_settings");

            migrationBuilder.DropColumn(
                name: "sown_later",
                table: "grow_outs");
        }
    }
}
