#!/usr/bin/env bash
# Tries what release.sh built, as somebody does who has nothing but the package: sums, form, install, start, one page,
# the same from the menu's entry, remove; what the user typed stays. The machine itself is not touched: the package goes
# into a folder with a package list of its own.
#
#   check.sh [FOLDER]     the folder that release.sh filled (build/release)
set -euo pipefail
cd "$(dirname "$0")/../.."
. internal/release/tools.sh
out=$(cd "${1:-build/release}" && pwd)
want dpkg-deb:dpkg curl:curl desktop-file-validate:desktop-file-utils man:man-db
[ "$(id -u)" = 0 ] || want fakeroot:fakeroot
native=$(go env GOHOSTARCH)
work=$(mktemp -d)
pid=
trap '[ -z "$pid" ] || kill "$pid"; rm -rf "$work"' EXIT
fail() { echo "package: $*" >&2; exit 1; }

package() { # runs dpkg on the folder
	local as=()
	[ "$(id -u)" = 0 ] || as=(fakeroot)
	PATH=$PATH:/usr/sbin:/sbin "${as[@]}" dpkg --force-not-root --root="$work/root" --log="$work/dpkg.log" "$@" >>"$work/dpkg.out" 2>&1 || { cat "$work/dpkg.out" >&2; return 1; }
}

# answers starts a program on its own data, asks it for its first page, and stops it the way Ctrl-C does.
answers() { # PROGRAM…
	HOME=$work/home XDG_DATA_HOME='' DUSKWEIGHT_DATA='' DISPLAY='' WAYLAND_DISPLAY='' "$@" -addr 127.0.0.1:0 >"$work/said" 2>&1 &
	pid=$!
	local url='' i
	for ((i = 0; i < 600 && ${#url} == 0; i++)); do
		kill -0 "$pid" 2>/dev/null || { cat "$work/said"; pid=; fail "$1 did not start"; }
		url=$(sed -n 's/^Duskweight: \(http.*\)$/\1/p' "$work/said")
		[ -n "$url" ] || sleep 0.1
	done
	[ -n "$url" ] || fail "$1 said no address within a minute"
	curl -fsS "$url" -o "$work/page" || fail "$1 does not answer"
	grep -q '<title>.*Duskweight' "$work/page" || fail "the first page of $1 has no title"
	grep -qF "$version" "$work/page" || fail "the first page of $1 does not name the version $version"
	kill -INT "$pid"
	wait "$pid" || { cat "$work/said"; fail "$1 ended with an error"; }
	pid=
	[ -s "$work/home/.local/share/duskweight/duskweight.db" ] || fail "$1 kept no data file"
}

(cd "$out" && sha256sum --quiet --strict -c SHA256SUMS) || fail "a file is not what SHA256SUMS says"
[ "$(cd "$out" && find . -type f ! -name SHA256SUMS | wc -l)" = "$(wc -l <"$out/SHA256SUMS")" ] || fail "SHA256SUMS leaves a file out"

deb=$(ls "$out"/duskweight_*_"$native".deb)
version=$(dpkg-deb -f "$deb" Version)
mkdir -p "$work/root/var/lib/dpkg/info" "$work/root/var/lib/dpkg/updates" "$work/home"
touch "$work/root/var/lib/dpkg/status"
package -i "$deb"
program=$work/root/usr/bin/duskweight
cmp "$program" "$out/duskweight_${version}_linux_$native"
[ "$("$program" version | head -n 1)" = "duskweight $version" ] || fail "it says it is $("$program" version)"
desktop=$work/root/usr/share/applications/duskweight.desktop
desktop-file-validate "$desktop"
[ -s "$work/root/usr/share/icons/hicolor/scalable/apps/$(sed -n 's/^Icon=//p' "$desktop").svg" ] || fail "the menu's picture is not there"
complaints=$(LC_ALL=C.UTF-8 man --warnings -l "$work/root/usr/share/man/man1/duskweight.1.gz" 2>&1 >/dev/null)
[ -z "$complaints" ] || fail "the manual: $complaints"
answers "$program" -no-browser
PATH=$work/root/usr/bin:$PATH answers "$(sed -n 's/^Exec=//p' "$desktop")"
data=$(sha256sum "$work/home/.local/share/duskweight/duskweight.db")
package --purge duskweight
left=$(find "$work/root" -path "$work/root/var" -prune -o ! -type d -print)
[ -z "$left" ] || fail "removing leaves $left"
sha256sum --quiet -c <<<"$data" || fail "removing changed what the user typed"
echo "package: installed, answered twice and removed: $(basename "$deb"), $(stat -c %s "$deb") bytes"

[ -z "${QUICK:-}" ] || exit 0

if want lintian:lintian; then
	# Whoever hands it out gives an address of their own (MAINTAINER); the one that stands in without it is none.
	for one in "$out"/*.deb; do
		lintian --allow-root --fail-on error,warning --suppress-tags bogus-mail-host,bogus-mail-host-in-debian-changelog "$one"
	done
fi
other=$(ls "$out"/duskweight_*_linux_* | grep -v "_$native$" | grep -v '\.json$' || true)
for one in $other; do
	case ${one##*_} in arm64) emulator=qemu-aarch64-static ;; amd64) emulator=qemu-x86_64-static ;; esac
	if want "$emulator:qemu-user-static"; then
		answers "$emulator" "$one" -no-browser
		echo "package: $(basename "$one") answered in $emulator"
	else
		echo "NOT RUN: $(basename "$one"), because $emulator is not here"
	fi
done
