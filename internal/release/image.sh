#!/usr/bin/env bash
# Builds the image as the Dockerfile says and tries it, by hand: it takes root, some minutes and 3 GB of disk.
#
#   image.sh              BASE=FOLDER keeps the root file system of the first stage there, and uses it again
#
# The first stage's image comes from a registry. Here it is made of what this machine has: Debian's packages and the Go of
# this machine, under the registry's name. The programs of the last stage are run in its root file system with a folder in
# the place of the volume, and not by buildah: without a container program of the system it only changes the root, and then
# the folder that it keeps for the volume hides the one that is asked for.
#
# Nothing outlives the trial: all runs in a process namespace of its own, which ends with this script, and with a network
# of its own, so that a program on port 8807 of this machine is not met.
set -euo pipefail
cd "$(dirname "$0")/../.."
. internal/release/tools.sh

if [ "${1:-}" = --inside ]; then # ROOT DATA USER ROUND; the files env, check and begin hold one word a line
	root=$2 data=$3 user=$4 round=$5 work=$6
	mapfile -t env <"$work/env"
	mapfile -t check <"$work/check"
	mapfile -t begin <"$work/begin"
	fail() { echo "image, round $round: $*" >&2; cat "$work/said" "$work/ill" >&2 2>/dev/null; exit 1; }
	in_image() { exec env -i "${env[@]}" /usr/sbin/chroot --userspec="$user" --groups= "$root" "$@"; }
	ip link set lo up
	mount --bind "$data" "$root/data"
	! (in_image "${check[@]}") >"$work/said" 2>&1 || fail "it is well before it runs"
	in_image "${begin[@]}" >"$work/said" 2>&1 &
	pid=$!
	for ((i = 0; i < 60; i++)); do
		if (in_image "${check[@]}") >"$work/ill" 2>&1; then break; fi
		kill -0 "$pid" 2>/dev/null || fail "it ended"
		sleep 1
	done
	(in_image "${check[@]}") >"$work/ill" 2>&1 || fail "it is not well after a minute"
	[ "$(stat -c %u "/proc/$pid")" = "${user%%:*}" ] || fail "it runs as another user"
	file=$data/duskweight/duskweight.db
	[ -s "$file" ] || fail "its data are not in the volume"
	[ "$(stat -c %u "$file")" = "${user%%:*}" ] || fail "its data belong to somebody else"
	if [ "$round" = 1 ]; then
		curl -fsS -o /dev/null -d '' http://127.0.0.1:8807/sample || fail "the worked example cannot be opened"
	fi
	curl -fsS http://127.0.0.1:8807/ | grep 'href="/projects/1' >/dev/null || fail "the project is not there"
	mv "$file" "$file.moved"
	! (in_image "${check[@]}") >"$work/ill" 2>&1 || fail "it is well without its file"
	mv "$file.moved" "$file"
	kill -TERM "$pid"
	wait "$pid" || fail "it ended with an error"
	exit 0
fi

[ "$(id -u)" = 0 ] || { echo "image: this takes root" >&2; exit 1; }
want buildah:buildah debootstrap:debootstrap ip:iproute2 unshare:util-linux curl:curl
work=$(mktemp -d)
inside=
build() { command buildah --root "$work/images" --runroot "$work/run" --storage-driver vfs "$@"; }
clean() {
	[ -z "$inside" ] || kill -KILL "$inside" 2>/dev/null || true # and with it all that runs in its namespace
	build rm --all >/dev/null 2>&1 || true
	rm -rf --one-file-system "$work"
}
trap clean EXIT
fail() { echo "image: $*" >&2; exit 1; }

base=${BASE:-$work/base}
if [ ! -x "$base/usr/bin/gcc" ]; then
	. /etc/os-release
	debootstrap --variant=minbase --include=gcc,libc6-dev,ca-certificates "$VERSION_CODENAME" "$base" >"$work/log" || { tail "$work/log" >&2; fail "no root file system"; }
fi
[ -x "$base/usr/local/go/bin/go" ] || cp -a "$(go env GOROOT)" "$base/usr/local/go"
named=$(sed -n 's/^FROM \(golang:[^ ]*\).*/\1/p' Dockerfile)
box=$(build from scratch)
build copy -q "$box" "$base" / >/dev/null
build config --env PATH=/usr/local/go/bin:/usr/sbin:/usr/bin:/sbin:/bin --env GOPATH=/go --env GOTOOLCHAIN=local \
	--env "GOPROXY=file:///modules,$(go env GOPROXY)" "$box"
build commit -q --rm "$box" "docker.io/library/$named" >/dev/null
build bud --isolation chroot --format docker --pull-never -v "$(go env GOMODCACHE)/cache/download:/modules:ro" -t duskweight . >"$work/log" 2>&1 ||
	{ tail -n 20 "$work/log" >&2; fail "the Dockerfile does not build"; }

config() { build inspect --type image --format "{{$1}}" duskweight; }
user=$(config .Docker.Config.User)
[ "${user%%:*}" -gt 0 ] || fail "it runs as root"
[ "$(config .Docker.Config.Volumes)" = 'map[/data:{}]' ] || fail "its volumes are $(config .Docker.Config.Volumes)"
config 'range .Docker.Config.Env}}{{println .}}{{end' | sed '/^$/d' >"$work/env"
config 'range .Docker.Config.Healthcheck.Test}}{{println .}}{{end' | sed '/^$/d' >"$work/check"
[ "$(head -n 1 "$work/check")" = CMD ] || fail "it has no check of its health"
sed -i 1d "$work/check"
config 'range .Docker.Config.Entrypoint}}{{println .}}{{end}}{{range .Docker.Config.Cmd}}{{println .}}{{end' | sed '/^$/d' >"$work/begin"

mkdir "$work/data"
chown "$user" "$work/data"
for round in 1 2; do
	box=$(build from --pull-never duskweight)
	root=$(build mount "$box")
	[ "$(stat -c '%u %a' "$root/data")" = "${user%%:*} 700" ] || fail "its folder for the data is not its own"
	unshare --mount --pid --mount-proc --net --fork --kill-child internal/release/image.sh --inside "$root" "$work/data" "$user" "$round" "$work" &
	inside=$!
	wait "$inside" || fail "round $round failed"
	inside=
	build umount "$box" >/dev/null
	build rm "$box" >/dev/null
done
echo "image: built, ran in two containers as user $user with one volume, and told when its file was gone"
