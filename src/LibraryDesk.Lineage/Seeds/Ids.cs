using System.Text.Json.Serialization;

namespace LibraryDesk.Lineage.Seeds;

/// <summary>A number handed out by <see cref="SeedIds"/>. All seed things share one rising series, so a parent's number is always
/// below its child's: that is what keeps the lineage acyclic. Zero is never handed out.</summary>
public interface ISeedId<TSelf>
    where TSelf : struct, ISeedId<TSelf>
{
    /// <summary>The number; 1 or more once handed out.</summary>
    long Value { get; }

    /// <summary>Wraps a stored number.</summary>
    static abstract TSelf From(long value);
}

/// <summary>Any node of the lineage: accession, lot, packet or grow-out.</summary>
[JsonConverter(typeof(SeedIdConverter<NodeId>))]
public readonly record struct NodeId(long Value) : ISeedId<NodeId>
{
    /// <inheritdoc/>
    public static NodeId From(long value) => new(value);
}

/// <summary>Seed as it came in, from one donor, at one time.</summary>
[JsonConverter(typeof(SeedIdConverter<AccessionId>))]
public readonly record struct AccessionId(long Value) : ISeedId<AccessionId>
{
    /// <summary>The same thing as a node of the lineage.</summary>
    public NodeId Node => new(Value);

    /// <inheritdoc/>
    public static AccessionId From(long value) => new(value);
}

/// <summary>Seed of one harvest, or of one accession, kept together.</summary>
[JsonConverter(typeof(SeedIdConverter<LotId>))]
public readonly record struct LotId(long Value) : ISeedId<LotId>
{
    /// <summary>The same thing as a node of the lineage.</summary>
    public NodeId Node => new(Value);

    /// <inheritdoc/>
    public static LotId From(long value) => new(value);
}

/// <summary>Seed put up from a lot, under a code.</summary>
[JsonConverter(typeof(SeedIdConverter<PacketId>))]
public readonly record struct PacketId(long Value) : ISeedId<PacketId>
{
    /// <summary>The same thing as a node of the lineage.</summary>
    public NodeId Node => new(Value);

    /// <inheritdoc/>
    public static PacketId From(long value) => new(value);
}

/// <summary>The growing of seed for seed.</summary>
[JsonConverter(typeof(SeedIdConverter<GrowOutId>))]
public readonly record struct GrowOutId(long Value) : ISeedId<GrowOutId>
{
    /// <summary>The same thing as a node of the lineage.</summary>
    public NodeId Node => new(Value);

    /// <inheritdoc/>
    public static GrowOutId From(long value) => new(value);
}

/// <summary>A packet taken home.</summary>
[JsonConverter(typeof(SeedIdConverter<LoanId>))]
public readonly record struct LoanId(long Value) : ISeedId<LoanId>
{
    /// <inheritdoc/>
    public static LoanId From(long value) => new(value);
}

/// <summary>A member's wish for seed of a lot, before it is picked.</summary>
[JsonConverter(typeof(SeedIdConverter<RequestId>))]
public readonly record struct RequestId(long Value) : ISeedId<RequestId>
{
    /// <inheritdoc/>
    public static RequestId From(long value) => new(value);
}

/// <summary>A hold on an accession, a lot or a packet.</summary>
[JsonConverter(typeof(SeedIdConverter<HoldId>))]
public readonly record struct HoldId(long Value) : ISeedId<HoldId>
{
    /// <inheritdoc/>
    public static HoldId From(long value) => new(value);
}

/// <summary>A name claim.</summary>
[JsonConverter(typeof(SeedIdConverter<ClaimId>))]
public readonly record struct ClaimId(long Value) : ISeedId<ClaimId>
{
    /// <inheritdoc/>
    public static ClaimId From(long value) => new(value);
}

/// <summary>A germination test.</summary>
[JsonConverter(typeof(SeedIdConverter<TestId>))]
public readonly record struct TestId(long Value) : ISeedId<TestId>
{
    /// <inheritdoc/>
    public static TestId From(long value) => new(value);
}

/// <summary>A person as the ledger knows them: an opaque id. Their details live elsewhere and can be erased.</summary>
[JsonConverter(typeof(PersonIdConverter))]
public readonly record struct PersonId(Guid Value);
