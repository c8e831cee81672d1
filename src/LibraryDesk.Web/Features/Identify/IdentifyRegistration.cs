using System.Globalization;
using System.Threading.RateLimiting;

namespace LibraryDesk.Web.Features.Identify;

/// <summary>How often one address may ask.</summary>
public static class IdentifyRegistration
{
    private const int PerMinute = 120;

    public static IServiceCollection AddIdentify(this IServiceCollection services) => services.AddRateLimiter(limits =>
    {
        limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limits.AddPolicy(IdentifyEndpoint.RatePolicy, http => RateLimitPartition.GetSlidingWindowLimiter(
            http.Connection.RemoteIpAddress?.ToString() ?? "",
            _ => new SlidingWindowRateLimiterOptions { PermitLimit = PerMinute, Window = TimeSpan.FromMinutes(1), SegmentsPerWindow = 6 }));
        limits.OnRejected = async (rejected, stop) =>
        {
            var wait = rejected.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromSeconds(10);
            rejected.HttpContext.Response.Headers.RetryAfter = Math.Ceiling(wait.TotalSeconds).ToString("0", CultureInfo.InvariantCulture);
            await TypedResults.Problem("Too many requests from this address in one minute. Wait a little, then go on.", statusCode: StatusCodes.Status429TooManyRequests)
                .ExecuteAsync(rejected.HttpContext);
        };
    });
}
