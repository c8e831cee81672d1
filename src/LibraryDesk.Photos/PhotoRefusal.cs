namespace LibraryDesk.Photos;

/// <summary>Why a photo was not taken. <paramref name="Code"/> is stable and tested; <paramref name="Message"/> says the rule and the way on.</summary>
public sealed record PhotoRefusal(string Code, string Message);
