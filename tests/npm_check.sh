#!/bin/sh
# Runs a script of node against the command, in a folder that has a package-lock.json. Installs Debian's
# nodejs and npm where they are missing, and the packages of the lock file.
# The last line counts the checks: "N passed, N failed".
#
#     sh tests/npm_check.sh FOLDER SCRIPT COMMAND
set -eu
folder=${1:?usage: npm_check.sh FOLDER SCRIPT COMMAND}
script=$2
command=$3

give_up() {
    echo "$1" >&2
    echo "0 passed, 1 failed"
    exit 1
}

[ -x "$command" ] || give_up "$command is not there; build it first, or name it."
command=$(cd "$(dirname "$command")" && pwd)/$(basename "$command")
root=$(cd "$(dirname "$0")/.." && pwd)
cd "$folder"
if ! command -v node >/dev/null 2>&1 || ! command -v npm >/dev/null 2>&1; then
    (cd "$root" && sh examples/install-packages.sh nodejs npm) || give_up "nodejs and npm could not be installed."
fi
npm ci --ignore-scripts --no-audit --no-fund || give_up "npm ci did not run to its end."

status=0
node "$script" "$command" || status=$?
# 0 and 1 come with the line that counts; anything else is a fault of the script.
[ "$status" -le 1 ] || give_up "$script ended with $status."
exit "$status"
