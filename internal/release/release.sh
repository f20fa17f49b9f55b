#!/usr/bin/env bash
# Builds what is handed to others into build/release: for each machine a program that needs nothing beside it, a Debian
# package and a bill of materials; the licences; the sums. The same commit gives the same bytes in any folder.
#
#   ARCHS="amd64 arm64"   the machines        VERSION=1.2.3   instead of what git says
#   OUT=FOLDER            the place           MAINTAINER="Name <address>", as the package names it
#   QUICK=1                with the objects of `go build` and no bill of materials: to try the package, never to hand out
set -euo pipefail
cd "$(dirname "$0")/../.."
here=internal/release
. "$here/tools.sh"

archs=${ARCHS:-amd64 arm64}
out=${OUT:-build/release}
native=$(go env GOHOSTARCH)
cc() { case $1 in "$native") echo gcc ;; amd64) echo x86_64-linux-gnu-gcc ;; arm64) echo aarch64-linux-gnu-gcc ;; *) echo "no compiler is known for $1" >&2; return 1 ;; esac; }

need=(git:git strings:binutils dpkg-deb:dpkg)
for arch in $archs; do
	compiler=$(cc "$arch")
	need+=("$compiler:$([ "$compiler" = gcc ] && echo gcc || echo "gcc-${compiler%-gcc}" | tr _ -)")
done
[ -n "${QUICK:-}" ] || need+=(jq:jq)
want "${need[@]}"

# A tag v1.2.3 is the version 1.2.3. Any other commit is dated, so that a later one is also the newer package.
if [ -z "${VERSION:-}" ]; then
	VERSION=$(git describe --tags --exact-match --match 'v[0-9]*' 2>/dev/null | sed 's/^v//') ||
		VERSION=0.0.0+$(TZ=UTC git log -1 --date=format-local:%Y%m%d%H%M%S --format=%cd.%h --abbrev=12)
	[ -z "$(git status --porcelain)" ] || VERSION+=.changed
fi
SOURCE_DATE_EPOCH=$(git log -1 --format=%ct)
export SOURCE_DATE_EPOCH CGO_ENABLED=1 GOOS=linux GOFLAGS=-buildvcs=false LC_ALL=C TZ=UTC
umask 022

# Names are looked up and users found by Go itself, and SQLite loads no extensions: the C library would want its own
# shared files for that.
tags=netgo,osusergo,sqlite_omit_load_extension
flags=(-trimpath -tags "$tags")
[ -z "${QUICK:-}" ] || flags=()

binary() { # ARCH FILE
	GOARCH=$1 CC=$(cc "$1") go build "${flags[@]}" -o "$2" -ldflags \
		"-s -w -buildid= -X main.stamped=$VERSION -linkmode external -extldflags '-static -Wl,--build-id=none'" ./cmd/duskweight
}

# linked prints module, version and folder of each module that is in the program, and the folders of its packages.
linked() { # ARCH
	GOARCH=$1 go list -deps -tags "$tags" -f '{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}} {{.Dir}} {{$.Dir}}{{end}}{{end}}' ./cmd/duskweight | sort -u
}

libc() { strings -n 20 "$("$(cc "$1")" -print-file-name=libc.a)" | sed -n 's/^GNU C Library (\(Debian GLIBC \)\?\([^)]*\)).*/\2/p'; }
sqlite() { sed -n 's/^#define SQLITE_VERSION  *"\(.*\)"/\1/p' "$(go list -m -f '{{.Dir}}' github.com/mattn/go-sqlite3)/sqlite3-binding.h" | head -n 1; }
echarts() { grep -aoE 't\.version="[0-9.]+"' web/static/echarts.min.js | cut -d'"' -f2; }
zrender() { grep -aoE 'dependencies=\{zrender:"[0-9.]+"' web/static/echarts.min.js | cut -d'"' -f2; }

chapter() { printf '\n\n%s\n%s\n\n' "$1" "$(printf '%s' "$1" | tr -c '=' '=')"; }
licences() {
	cat "$here/licences/first.txt"
	for arch in $archs; do echo "  for $arch: $(libc "$arch")"; done
	local path version dir package before='' files third
	while read -r path version dir package; do
		if [ "$path" != "$before" ]; then
			third=$dir/THIRD_PARTY_LICENSES
			[ -d "$third" ] || third=
			files=$(find "$dir" $third -maxdepth 1 -type f -iregex '.*/\(licen[cs]e\|copying\|notice\|copyright\|patents\)[^/]*\|.*/THIRD_PARTY_LICENSES/.*' | sort -u)
			[ -n "$files" ] || { echo "$path has no licence file" >&2; return 1; }
			chapter "$path $version"
			xargs -d '\n' cat <<<"$files"
		elif [ "$package" != "$dir" ]; then
			find "$package" -maxdepth 1 -type f -iregex '.*/\(licen[cs]e\|copying\|notice\)[^/]*' -exec cat {} +
		fi
		before=$path
	done < <(for arch in $archs; do linked "$arch"; done | sort -u)
	chapter "Go $(go env GOVERSION | sed 's/^go//'): its run time and standard library"
	cat "$(go env GOROOT)/LICENSE" "$(go env GOROOT)/PATENTS"
	chapter "Apache ECharts $(echarts), served to the browser"
	cat web/static/echarts.LICENSE.txt
	chapter "d3.js, in parts of ECharts"
	cat "$here/licences/d3.txt"
	chapter "zrender $(zrender), in ECharts"
	cat "$here/licences/zrender.txt"
	chapter "GNU C Library: the GNU Lesser General Public License 2.1"
	cat /usr/share/common-licenses/LGPL-2.1
}

bom() { # ARCH FILE BINARY
	GOARCH=$1 "$tool" bin -json -licenses -std -noserial -notimestamp -version "$VERSION" "$3" 2>"$work/bom.log" >"$work/bom.json" || { cat "$work/bom.log" >&2; return 1; }
	jq --arg time "$(date -u -d "@$SOURCE_DATE_EPOCH" +%FT%TZ)" --arg sqlite "$(sqlite)" --arg echarts "$(echarts)" --arg zrender "$(zrender)" \
		--arg libc "$(libc "$1")" --arg sum "$(sha256sum <"$3" | cut -d' ' -f1)" -f "$here/bom.jq" "$work/bom.json" >"$2"
	# What the bill names is what the program says of itself, and nothing in it is without a licence.
	diff <(go version -m "$3" | awk '$1 == "dep" { print $2 "@" $3 }' | sort) \
		<(jq -r '.components[] | select(.purl // "" | startswith("pkg:golang/") and (startswith("pkg:golang/std@") | not)) | .name + "@" + .version' "$2" | sort)
	jq -e '[.components[] | select((.licenses // .evidence.licenses // []) == []) | .name] as $none | if $none == [] then true else error("no licence: \($none)") end' "$2" >/dev/null
}

deb() { # ARCH BINARY
	local root=$work/deb_$1
	install -D -m 755 "$2" "$root/usr/bin/duskweight"
	install -D -m 644 "$here/duskweight.desktop" -t "$root/usr/share/applications"
	install -D -m 644 web/static/mark.svg "$root/usr/share/icons/hicolor/scalable/apps/duskweight.svg"
	install -D -m 644 "$out/${name}_licences.txt" "$root/usr/share/doc/duskweight/copyright"
	install -D -m 644 "$here/lintian-overrides" "$root/usr/share/lintian/overrides/duskweight"
	mkdir -p "$root/usr/share/man/man1" "$root/DEBIAN"
	gzip -9n <"$here/duskweight.1" >"$root/usr/share/man/man1/duskweight.1.gz"
	printf 'duskweight (%s) stable; urgency=low\n\n  * What changed stands in the history of the source.\n\n -- %s  %s\n' \
		"$VERSION" "$maintainer" "$(date -u -R -d "@$SOURCE_DATE_EPOCH")" | gzip -9n >"$root/usr/share/doc/duskweight/changelog.gz"
	(cd "$root" && find usr -type f -print0 | sort -z | xargs -0 md5sum) >"$root/DEBIAN/md5sums"
	sed -e "s/@VERSION@/$VERSION/" -e "s/@ARCH@/$1/" -e "s/@MAINTAINER@/$maintainer/" \
		-e "s/@SIZE@/$(find "$root/usr" -type f -printf '%s\n' | awk '{ k += int(($1 + 1023) / 1024) } END { print k }')/" "$here/control" >"$root/DEBIAN/control"
	dpkg-deb --root-owner-group ${QUICK:+-Zgzip -z1} --build "$root" "$out/${name}_$1.deb" >/dev/null
}

rm -rf "$out"
mkdir -p "$out"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
name=duskweight_$VERSION
maintainer=${MAINTAINER:-"Duskweight <duskweight@localhost>"}
if [ -z "${QUICK:-}" ]; then
	(unset GOOS CGO_ENABLED; cd internal/tools && go build -o "$work/cyclonedx-gomod" github.com/CycloneDX/cyclonedx-gomod/cmd/cyclonedx-gomod)
	tool=$work/cyclonedx-gomod
fi
licences >"$out/${name}_licences.txt"
for arch in $archs; do
	binary "$arch" "$out/${name}_linux_$arch"
	deb "$arch" "$out/${name}_linux_$arch"
	[ -n "${QUICK:-}" ] || bom "$arch" "$out/${name}_linux_$arch.cdx.json" "$out/${name}_linux_$arch"
done
(cd "$out" && sha256sum -- * >SHA256SUMS)
cat "$out/SHA256SUMS"
