using System.Text;

namespace LibraryDesk.Lineage.Ledger;

/// <summary>
/// Writes what is hashed of an entry: the canonical JSON (RFC 8785) of everything but the hash, in UTF-8. The member names are fixed and
/// already in order, and the payload is canonical as stored, so it is put together without parsing. One buffer is used again and again:
/// a walk along a million entries has no time to throw things away.
/// </summary>
internal sealed class EntryText
{
    private byte[] _bytes = new byte[4096];
    private int _length;

    /// <summary>The bytes; good until the next call.</summary>
    public ReadOnlySpan<byte> Of(LedgerEntry entry)
    {
        _length = 0;
        Put("{\"actor\":\""u8);
        entry.Actor.Value.TryFormat(Room(36), out var written, "D");
        _length += written;
        Put("\",\"kind\":\""u8);
        Put(SeedActJson.NameOf(entry.Kind));
        Put("\",\"payload\":"u8);
        Put(entry.Payload);
        Put(",\"previous\":\""u8);
        Put(entry.Previous.Hex);
        Put("\",\"sequence\":"u8);
        Put(entry.Sequence);
        Put(",\"subjects\":["u8);
        for (var place = 0; place < entry.Subjects.Count; place++)
        {
            if (place > 0) Put(","u8);
            Put(entry.Subjects[place].Value);
        }

        Put("],\"time\":\""u8);
        Put(entry.At.UtcDateTime);
        Put("\"}"u8);
        return _bytes.AsSpan(0, _length);
    }

    // 2026-11-25T09:00:00.000Z
    private void Put(DateTime time)
    {
        Digits(time.Year, 4);
        Put("-"u8);
        Digits(time.Month, 2);
        Put("-"u8);
        Digits(time.Day, 2);
        Put("T"u8);
        Digits(time.Hour, 2);
        Put(":"u8);
        Digits(time.Minute, 2);
        Put(":"u8);
        Digits(time.Second, 2);
        Put("."u8);
        Digits(time.Millisecond, 3);
        Put("Z"u8);
    }

    private void Digits(int number, int count)
    {
        var room = Room(count);
        for (var place = count - 1; place >= 0; place--)
        {
            room[place] = (byte)('0' + (number % 10));
            number /= 10;
        }

        _length += count;
    }

    private void Put(long number)
    {
        number.TryFormat(Room(20), out var written, default, System.Globalization.CultureInfo.InvariantCulture);
        _length += written;
    }

    private void Put(string text) => _length += Encoding.UTF8.GetBytes(text, Room(Encoding.UTF8.GetMaxByteCount(text.Length)));

    private void Put(ReadOnlySpan<byte> text)
    {
        text.CopyTo(Room(text.Length));
        _length += text.Length;
    }

    private Span<byte> Room(int count)
    {
        if (_bytes.Length - _length < count) Array.Resize(ref _bytes, Math.Max(_bytes.Length * 2, _length + count));
        return _bytes.AsSpan(_length);
    }
}
