using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;

namespace LibraryDesk.Benchmarks.Lineage;

/// <summary>Writes many rows of one table as fast as the database takes them: COPY on PostgreSQL, a prepared INSERT on SQLite. Columns and values are the model's own.</summary>
internal sealed class BulkTable
{
    private readonly string _table;
    private readonly IProperty[] _properties;

    public BulkTable(IEntityType entity)
    {
        _table = entity.GetTableName()!;
        _properties = [.. entity.GetProperties()];
    }

    private string Columns => string.Join(", ", _properties.Select(property => property.GetColumnName()));

    public void Write(DbConnection connection, IEnumerable<object> rows)
    {
        if (connection is NpgsqlConnection postgres) Copy(postgres, rows);
        else Insert(connection, rows);
    }

    private void Copy(NpgsqlConnection connection, IEnumerable<object> rows)
    {
        using var copy = connection.BeginBinaryImport($"COPY {_table} ({Columns}) FROM STDIN (FORMAT BINARY)");
        foreach (var row in rows)
        {
            copy.StartRow();
            foreach (var property in _properties)
            {
                if (ValueOf(property, row) is { } value) copy.Write(value);
                else copy.WriteNull();
            }
        }

        copy.Complete();
    }

    private void Insert(DbConnection connection, IEnumerable<object> rows)
    {
        using var transaction = connection.BeginTransaction();
        using var insert = connection.CreateCommand();
        insert.Transaction = transaction;
        insert.CommandText = $"INSERT INTO {_table} ({Columns}) VALUES ({string.Join(", ", _properties.Select((_, place) => $"@p{place}"))})";
        foreach (var (_, place) in _properties.Select((property, place) => (property, place)))
        {
            var parameter = insert.CreateParameter();
            parameter.ParameterName = $"@p{place}";
            insert.Parameters.Add(parameter);
        }

        foreach (var row in rows)
        {
            for (var place = 0; place < _properties.Length; place++) insert.Parameters[place].Value = ValueOf(_properties[place], row) ?? DBNull.Value;
            insert.ExecuteNonQuery();
        }

        transaction.Commit();
    }

    private static object? ValueOf(IProperty property, object row)
    {
        var value = property.PropertyInfo!.GetValue(row);
        return value is not null && property.GetTypeMapping().Converter is { } converter ? converter.ConvertToProvider(value) : value;
    }
}
