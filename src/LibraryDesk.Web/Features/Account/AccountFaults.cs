using LibraryDesk.Lineage;
using LibraryDesk.Web.Shared.Forms;

namespace LibraryDesk.Web.Features.Account;

/// <summary>Ties a refusal about accounts to the field it is about.</summary>
internal static class AccountFaults
{
    public static FormFault From(Refusal no) => new(
        no.Code switch
        {
            "people.name" => "name",
            "people.email" or "people.email-taken" => "email",
            "people.password" => "password",
            "people.password-wrong" => "present",
            "people.set-up-code" => "code",
            "settings.name" => "library",
            _ => null,
        },
        no);
}
