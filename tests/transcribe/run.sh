#!/bin/sh
# Holds the amounts of ingredient lines against a general reader of numbers. Installs Debian's nodejs and npm where
# they are missing, and the npm package of package-lock.json.
# The last line counts the checks: "N passed, N failed".
#
#     sh tests/transcribe/run.sh [COMMAND]     build/release/leavenwright by default
set -eu
command=${1:-"$(dirname "$0")/../../build/release/leavenwright"}
here=$(cd "$(dirname "$0")" && pwd)

give_up() {
    echo "$1" >&2
    echo "0 passed, 1 failed"
    exit 1
}

[ -x "$command" ] || give_up "$command is not there; build it first, or name it."
command=$(cd "$(dirname "$command")" && pwd)/$(basename "$command")
cd "$here"
if ! command -v node >/dev/null 2>&1 || ! command -v npm >/dev/null 2>&1; then
    (cd ../.. && sh examples/install-packages.sh nodejs npm) || give_up "nodejs and npm could not be installed."
fi
npm ci --ignore-scripts --no-audit --no-fund || give_up "npm ci did not run to its end."

status=0
node compare.mjs "$command" || status=$?
# 0 and 1 come with the line that counts; anything else is a fault of the script.
[ "$status" -le 1 ] || give_up "compare.mjs ended with $status."
exit "$status"
