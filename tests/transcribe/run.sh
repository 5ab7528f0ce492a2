#!/bin/sh
# Holds the amounts of ingredient lines against a general reader of numbers.
# The last line counts the checks: "N passed, N failed".
#
#     sh tests/transcribe/run.sh [COMMAND]     build/release/leavenwright by default
set -eu
here=$(cd "$(dirname "$0")" && pwd)
exec sh "$here/../npm_check.sh" "$here" compare.mjs "${1:-"$here/../../build/release/leavenwright"}"
