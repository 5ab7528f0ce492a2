#!/bin/sh
# Installs those of the named Debian packages that are missing, as root or through sudo.
# Says what it is about to do first; does nothing where all are there.
#
#     sh examples/install-packages.sh PACKAGE...
set -eu

missing=""
for package in "$@"; do
    status=$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null || true)
    if [ "$status" != installed ]; then
        missing="$missing $package"
    fi
done
if [ -z "$missing" ]; then
    exit 0
fi

as_root=""
if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
        echo "These Debian packages are needed:$missing" >&2
        echo "Run this as root, install sudo, or install them yourself." >&2
        exit 1
    fi
    as_root=sudo
fi
echo "About to install Debian packages:$missing"
# A list older than the archive names files that are gone.
$as_root apt-get update -q
# shellcheck disable=SC2086 # a list of words is meant
$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $missing
