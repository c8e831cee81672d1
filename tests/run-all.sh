#!/usr/bin/env bash
# Every test: unit, property, both databases on real servers, component, browser.
# Installs what is missing where it may; otherwise says exactly what to install.
set -u
cd "$(dirname "$0")/.." || exit 1
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1
# Nothing that a build leaves running may outlive this script.
export MSBUILDDISABLENODEREUSE=1 UseSharedCompilation=false DOTNET_CLI_USE_MSBUILD_SERVER=0
results=$(mktemp -d)
trap 'rm -rf "$results"' EXIT

say() { printf '\n== %s\n' "$*"; }
stop() { printf '%s\n0 passed, 1 failed\n' "$*"; exit 1; }

# --- what has to be there -------------------------------------------------------------------------------------------
needed=()      # without these the tests cannot run
helpful=()     # without these some outside checks are skipped, and say so
ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 || [ -n "${LIBRARYDESK_TEST_POSTGRES:-}" ] || needed+=(postgresql)
[ -x /usr/bin/chromium ] || [ -n "${LIBRARYDESK_TEST_CHROMIUM:-}" ] || needed+=(chromium)
command -v exiftool >/dev/null || helpful+=(libimage-exiftool-perl)
command -v zbarimg >/dev/null || helpful+=(zbar-tools)
command -v pdftoppm >/dev/null || helpful+=(poppler-utils)
command -v identify >/dev/null || helpful+=(imagemagick)     # its `convert` may be another's
/usr/bin/python3 -c 'import sklearn' 2>/dev/null || helpful+=(python3-sklearn)
/usr/bin/python3 -c 'import networkx' 2>/dev/null || helpful+=(python3-networkx)
if [ ${#needed[@]} -gt 0 ] || [ ${#helpful[@]} -gt 0 ]; then
  say "Installing ${needed[*]} ${helpful[*]}"
  if command -v apt-get >/dev/null && [ "$(id -u)" = 0 ]; then
    export DEBIAN_FRONTEND=noninteractive
    apt-get update -qq && apt-get install -y -qq --no-install-recommends "${needed[@]}" "${helpful[@]}" >"$results/apt.log" 2>&1 || tail -n 5 "$results/apt.log"
  fi
  ls /usr/lib/postgresql/*/bin/initdb >/dev/null 2>&1 || [ -n "${LIBRARYDESK_TEST_POSTGRES:-}" ] ||
    stop "PostgreSQL is missing. Install it (Debian: sudo apt-get install postgresql), or set LIBRARYDESK_TEST_POSTGRES to a connection string that may create databases."
  [ -x /usr/bin/chromium ] || [ -n "${LIBRARYDESK_TEST_CHROMIUM:-}" ] ||
    stop "Chromium is missing. Install it (Debian: sudo apt-get install chromium), or set LIBRARYDESK_TEST_CHROMIUM to the path of one."
fi
command -v dotnet >/dev/null || stop "The .NET 10 SDK is missing. Install it, then run this again."

# --- build ------------------------------------------------------------------------------------------------------------
say "Building"
dotnet tool restore >/dev/null || stop "The local tools could not be restored."
dotnet build LibraryDesk.sln -c Release -v q || stop "The build failed."

say "Does each database's migration match the model?"
failed=0 passed=0 skipped=0
for database in Sqlite Postgres; do
  project=src/LibraryDesk.Data.$database
  if dotnet ef migrations has-pending-model-changes --project $project --startup-project $project --configuration Release --no-build >"$results/$database.txt" 2>&1; then
    echo "$database: yes"; passed=$((passed + 1))
  else
    cat "$results/$database.txt"; failed=$((failed + 1))
  fi
done

# --- test -------------------------------------------------------------------------------------------------------------
for folder in tests/*.Tests tests/LibraryDesk.EndToEnd; do
  name=$(basename "$folder")
  say "$name"
  dotnet test "$folder" -c Release --no-build --logger "trx;LogFileName=$results/$name.trx" --logger "console;verbosity=minimal" --blame-hang-timeout 30m
  counters=$(grep -o '<Counters [^>]*>' "$results/$name.trx" 2>/dev/null)
  count() { sed -n "s/.* $1=\"\([0-9]*\)\".*/\1/p" <<<"$counters"; }
  if [ -z "$counters" ]; then
    echo "$name ended without a result."; failed=$((failed + 1)); continue
  fi
  passed=$((passed + $(count passed)))
  failed=$((failed + $(count failed) + $(count error) + $(count timeout) + $(count aborted)))
  skipped=$((skipped + $(count total) - $(count executed)))
done

[ $skipped -gt 0 ] && say "$skipped skipped: their outside data or reference program is not on this machine (each says which)"
echo
echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
