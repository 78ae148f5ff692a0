#!/usr/bin/env bash
# Fetches what the build needs (`setup.sh run`), what the tests need beside it (`setup.sh test`), and for `make chdb` the
# second engine beside it (`setup.sh chdb`). Running it again costs nothing. With root, or sudo that asks no password,
# missing Debian packages are installed; without, it says what is missing and how to get it.
set -euo pipefail
cd "$(dirname "$0")/.."

what=${1:-test}
tools=${STEPBOARD_TOOLS:-$HOME/.cache/stepboard/tools}
deny_version=0.20.2
geckodriver_version=0.37.1
node_least=20.12
duckdb_version=2.0.1
chdb_version=4.4.0
missing=()

say() { printf 'setup: %s\n' "$*"; }
# have PROGRAM: a file in the path; `command -v` would find a function of this script by the same name too.
have() { type -P "$1" >/dev/null; }
lacks() { missing+=("$1: $2"); }

as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"; else sudo -n "$@"; fi
}
can_install() {
    have apt-get && { [ "$(id -u)" = 0 ] || { have sudo && sudo -n true 2>/dev/null; }; }
}
updated=no
# packages NAME...: installs Debian packages, or fails where that is not possible.
packages() {
    can_install || return 1
    say "installing $*"
    if [ $updated = no ]; then as_root apt-get update -qq && updated=yes; fi
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "$@" >/dev/null
}
# The version that Cargo.lock fixes for a package.
locked() { awk -v name="\"$1\"" '$1 == "name" && $3 == name { getline; gsub(/"/, "", $3); print $3; exit }' Cargo.lock; }
# tool PROGRAM PACKAGE VERSION: a program built from its sources, kept out of the user's own programs.
tool() {
    local now=''
    if [ -x "$tools/bin/$1" ]; then now=$("$tools/bin/$1" --version 2>/dev/null | awk 'NR == 1 { print $2 }'); fi
    if [ "$now" != "$3" ]; then
        say "building $2 $3 (some minutes, once)"
        # The program is built once and run briefly: without optimisation it is ready soonest.
        # Its own lock file may name releases that are withdrawn since, and without it newer ones may not fit: one of
        # the two works.
        local install=(cargo install --quiet --debug --force --root "$tools" "$2" --version "$3")
        "${install[@]}" || { say "trying again with the lock file of $2" && "${install[@]}" --locked; }
    fi
}

# engine PACKAGE VERSION: an SQL engine from the Python index, in a place of its own.
engine() {
    local place=$tools/$1
    if [ "$(cat "$place/ready" 2>/dev/null)" != "$2" ]; then
        say "fetching $1 $2"
        rm -rf "$place"
        python3 -m venv "$place"
        "$place/bin/pip" install --quiet --disable-pip-version-check "$1==$2"
        echo "$2" >"$place/ready"
    fi
}

have cc || packages build-essential || lacks 'a C linker' 'on Debian: apt-get install build-essential'
have cargo || lacks 'Rust' 'https://rustup.rs, version 1.95 or later'
have node && have npm || packages nodejs npm || lacks 'Node' "https://nodejs.org, version $node_least or later"
node_enough() { [ "$(printf '%s\n' $node_least "$(node -p process.versions.node)" | sort -V | head -n 1)" = $node_least ]; }
if have node && ! node_enough; then
    lacks "Node $node_least" "found $(node --version); https://nodejs.org"
fi

if [ "$what" != run ] && ! python3 -c 'import venv, ensurepip' 2>/dev/null; then
    packages python3 python3-venv || lacks 'Python 3 with venv' 'on Debian: apt-get install python3 python3-venv'
fi

if have cargo; then
    target=wasm32-unknown-unknown
    if [ ! -d "$(rustc --print target-libdir --target $target)" ]; then
        if have rustup; then say "adding the target $target" && rustup --quiet target add $target
        else lacks "the Rust target $target" "your distribution's package for it, or rustup"; fi
    fi
    if [ "$what" = test ]; then
        for part in fmt clippy; do
            cargo "$part" --version >/dev/null 2>&1 && continue
            if have rustup; then say "adding cargo $part" && rustup --quiet component add "${part/fmt/rustfmt}"
            else lacks "cargo $part" "your distribution's package for it, or rustup"; fi
        done
    fi
fi

browser() { have chromium || have chromium-browser || have google-chrome || [ -n "${CHROME:-}" ]; }
driver() { have chromedriver || [ -n "${CHROMEDRIVER:-}" ]; }
if [ "$what" = test ] && ! { browser && driver; }; then
    packages chromium chromium-driver ||
        lacks 'Chromium and its driver' 'on Debian: apt-get install chromium chromium-driver; or set CHROME and CHROMEDRIVER to their paths'
fi

# The same journeys run in Firefox, and in WebKitGTK by the small browser that comes with it, on a screen in memory.
firefox() { have firefox-esr || have firefox || [ -n "${FIREFOX:-}" ]; }
webkit() { { have WebKitWebDriver || [ -n "${WEBKITDRIVER:-}" ]; } && { have Xvfb || [ -n "${XVFB:-}" ]; }; }
if [ "$what" = test ] && ! firefox; then
    packages firefox-esr || lacks 'Firefox' 'on Debian: apt-get install firefox-esr; or set FIREFOX to its path'
fi
if [ "$what" = test ] && ! webkit; then
    packages webkit2gtk-driver xvfb ||
        lacks 'WebKitGTK with its driver, and Xvfb' 'on Debian: apt-get install webkit2gtk-driver xvfb; or set WEBKITDRIVER, MINIBROWSER and XVFB to their paths'
fi

# The folder is tested against real WebDAV servers, which the tests start by themselves, and the password file is made with openssl.
servers() {
    [ -x /usr/sbin/apache2 ] && [ -e /usr/lib/apache2/modules/mod_dav_fs.so ] &&
        [ -x /usr/sbin/lighttpd ] && [ -e /usr/lib/lighttpd/mod_webdav.so ] && have openssl
}
if [ "$what" = test ] && ! servers; then
    packages apache2-bin lighttpd lighttpd-mod-webdav openssl ||
        lacks 'two WebDAV servers' 'on Debian: apt-get install apache2-bin lighttpd lighttpd-mod-webdav openssl'
fi

# Where words stand on printed pages is read by Poppler.
if [ "$what" = test ] && ! have pdftotext; then
    packages poppler-utils || lacks 'pdftotext' 'on Debian: apt-get install poppler-utils'
fi

if [ ${#missing[@]} -gt 0 ]; then
    say 'this machine lacks'
    printf '  %s\n' "${missing[@]}"
    exit 1
fi

tool wasm-bindgen wasm-bindgen-cli "$(locked wasm-bindgen)"
if [ "$what" = test ]; then
    tool cargo-deny cargo-deny $deny_version
    [ -n "${GECKODRIVER:-}" ] || tool geckodriver geckodriver $geckodriver_version
    engine duckdb $duckdb_version
fi
if [ "$what" = chdb ]; then engine chdb $chdb_version; fi

# npm removes and fetches everything: only when what is asked for has changed.
if ! cmp -s package-lock.json node_modules/.from-lock; then
    say 'fetching the Node packages'
    npm ci --silent --no-audit --no-fund
    cp package-lock.json node_modules/.from-lock
fi
say 'all there'
