#!/bin/sh
# Holds the formula's JSON Schema against the reader.
# The last line counts the checks: "N passed, N failed".
#
#     sh tests/schema/run.sh [COMMAND]     build/release/leavenwright by default
set -eu
here=$(cd "$(dirname "$0")" && pwd)
exec sh "$here/../npm_check.sh" "$here" validate.mjs "${1:-"$here/../../build/release/leavenwright"}"
