# For the scripts beside it: brings programs, the way .ci/run does.

# want COMMAND:PACKAGE… installs the Debian packages of commands that are not here, where the package manager lets us
# without asking: as root, or where CI is set. What stays missing is named, and the answer is no.
want() {
	local as=() need=() left=() pair
	for pair; do command -v "${pair%%:*}" >/dev/null || need+=("${pair#*:}"); done
	[ ${#need[@]} -gt 0 ] || return 0
	if [ "$(id -u)" != 0 ]; then
		if [ -n "${CI:-}" ] && sudo -n true 2>/dev/null; then as=(sudo -n); else as=(false); fi
	fi
	echo "installing ${need[*]}" >&2
	"${as[@]}" apt-get -qq update >&2 &&
		"${as[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq install -y --no-install-recommends "${need[@]}" >/dev/null || true
	for pair; do command -v "${pair%%:*}" >/dev/null || left+=("${pair%%:*} (package ${pair#*:})"); done
	[ ${#left[@]} -gt 0 ] || return 0
	echo "missing on this machine: ${left[*]}" >&2
	return 1
}
