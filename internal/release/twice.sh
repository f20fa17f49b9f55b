#!/usr/bin/env bash
# Builds the last commit into build/release, and once more in another folder with an empty cache; both give the same bytes.
set -euo pipefail
cd "$(dirname "$0")/../.."
top=$PWD
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
[ -z "$(git status --porcelain)" ] || { echo "there are changes that are not committed" >&2; exit 1; }
for copy in "$work/one" "$work/another/much/deeper"; do
	git clone -q --no-hardlinks "$top" "$copy"
	git -C "$copy" -c advice.detachedHead=false checkout -q "$(git rev-parse HEAD)"
done
OUT=$top/build/release "$work/one/internal/release/release.sh"
GOCACHE=$work/cache TMPDIR=$work "$work/another/much/deeper/internal/release/release.sh" >/dev/null
diff -r "$top/build/release" "$work/another/much/deeper/build/release"
echo "release: the same bytes from two folders"
