# Shared by the scripts beside this folder: where things are, how to speak, how to stop.
# shellcheck shell=bash

root="$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)"
deps="$root/build/deps"

# Debian's own JavaScript modules. emcc needs acorn from there, and a Node that is not Debian's
# does not look there by itself.
export NODE_PATH="${NODE_PATH:+$NODE_PATH:}/usr/share/nodejs"

say() { printf '%s\n' "$*" >&2; }
die() { say "${0##*/}: $*"; exit 1; }

# Name, pool path and hash of every pinned source, one per line.
pinned_sources() { grep -v '^#' "$root/scripts/lib/sources.tsv"; }

# True when the pinned source $1 with hash $2 is unpacked, or its own variable points elsewhere.
source_ready() {
  local own="FETCHCONTENT_SOURCE_DIR_${1^^}"
  [ -n "${!own:-}" ] && [ -d "${!own}" ] && return 0
  [ "$(cat "$deps/$1.sha256" 2>/dev/null)" = "$2" ] && [ -d "$deps/$1" ]
}

# Stops with one line when a program or a pinned source is missing. Installs nothing.
require_program() {
  command -v "$1" >/dev/null || die "$1 is missing; scripts/setup installs it (Debian package: ${2:-$1})"
}
require_sources() {
  local name path hash
  while IFS=$'\t' read -r name path hash; do
    source_ready "$name" "$hash" ||
      die "${path##*/} is not in build/deps; scripts/setup fetches it, or set FETCHCONTENT_SOURCE_DIR_${name^^} to your own copy"
  done < <(pinned_sources)
}
