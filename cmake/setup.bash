# Sourced by app/run and tests/run: installs what is missing and runs steps with their output kept
# in build/logs/, so that the terminal shows one line a step and the log only when a step fails.

say() { printf '%s\n' "$*"; }
give_up() { printf '\n%s\n' "$*" >&2; exit 3; }

# packages_of GROUP...: their names from packages.txt
packages_of() {
  local group
  for group in "$@"; do
    sed -n "s/^$group  *//p" "$top/cmake/packages.txt"
  done
}

# apt_get ARGUMENTS: as root, never asking anything
apt_get() {
  local -a as_root=()
  [[ $(id -u) -eq 0 ]] || as_root=(sudo)
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get -y -q -o DPkg::Lock::Timeout=300 -o Acquire::Retries=2 "$@" </dev/null
}

# install_missing GROUP...: no call of apt when everything is there
install_missing() {
  local -a wanted missing=()
  local package
  mapfile -t wanted < <(packages_of "$@")
  if ! command -v dpkg-query >/dev/null; then
    say "This is not a Debian system, so nothing is installed. The build needs what Debian 12 calls:"
    say "  ${wanted[*]}"
    return
  fi
  local installed
  installed=" $(dpkg-query -W -f '${Package}=${db:Status-Status} ' "${wanted[@]}" 2>/dev/null)"
  for package in "${wanted[@]}"; do
    [[ $installed == *" $package=installed "* ]] || missing+=("$package")
  done
  if [[ ${#missing[@]} -eq 0 ]]; then
    say "Packages: all ${#wanted[@]} needed are installed."
    return
  fi
  say "Packages needed: ${wanted[*]}"
  say "Missing, to be installed with apt: ${missing[*]}"
  local by_hand="apt-get install --no-install-recommends ${missing[*]}"
  if [[ $(id -u) -ne 0 ]] && ! command -v sudo >/dev/null; then
    give_up "Installing needs root, and there is no sudo. As root, run:
  apt-get update && $by_hand
then start this again."
  fi

  mkdir -p "$logs"
  local log="$logs/apt.log" unknown=()
  # An update that fails for one unneeded source need not stop us; the installation decides.
  apt_get update >"$log" 2>&1 || say "apt-get update had trouble (see ${log#"$top"/}); trying to install all the same."
  for package in "${missing[@]}"; do
    apt-cache show "$package" >/dev/null 2>&1 || unknown+=("$package")
  done
  if [[ ${#unknown[@]} -gt 0 ]]; then
    tail -n 5 "$log" >&2
    give_up "apt does not know: ${unknown[*]}
Either the package lists could not be fetched (is the network up?), or the sources of apt do not
name Debian 12 (bookworm) main: look at /etc/apt/sources.list and /etc/apt/sources.list.d/."
  fi
  if ! apt_get install --no-install-recommends "${missing[@]}" >>"$log" 2>&1; then
    tail -n 12 "$log" >&2
    give_up "apt could not install the missing packages (whole log: ${log#"$top"/}).
If it names a host that cannot be reached, the network is down; otherwise try by hand:
  $by_hand"
  fi
  say "Installed ${#missing[@]} packages."
}

# has_display: a screen to open a window on
has_display() { [[ -n ${DISPLAY:-} || -n ${WAYLAND_DISPLAY:-} ]]; }

# build_program [window]: tackbench-cli in build/release, and the window when asked, with what they
# need; 1 when that fails
build_program() {
  local window=${1:-} cache=$top/build/release/CMakeCache.txt
  local -a targets=(tackbench-cli) wanted=(-DTACKBENCH_WINDOW=OFF)
  if [[ $window == window ]]; then
    targets+=(tackbench)
    wanted=(-DTACKBENCH_WINDOW=ON)
    install_missing build window
  else
    install_missing build
  fi
  # The tests' own packages are not wanted here; a build folder that has them, or the window, keeps
  # them.
  if [[ ! -f $top/build/release/build.ninja ]]; then
    (cd "$top" && step configure "Configuring build/release" \
      cmake --preset release -DTACKBENCH_TESTS=OFF "${wanted[@]}") || return 1
  elif [[ $window == window ]] && ! grep -q '^TACKBENCH_WINDOW:BOOL=ON' "$cache"; then
    (cd "$top" && step configure "Configuring build/release for the window" \
      cmake --preset release "${wanted[@]}") || return 1
  fi
  (cd "$top" && step build "Building ${targets[*]} (the first time takes a few minutes)" \
    cmake --build --preset release --target "${targets[@]}") || return 1
  # A source that changes nothing in the program would otherwise ask for a build every time.
  touch "$top/build/release/app/command-line/tackbench-cli"
}

# step LOG-NAME WORDS COMMAND...: one line on the terminal; the log's end when it fails.
# Answers with the command's own success.
step() {
  local log="$logs/$1.log" words=$2
  shift 2
  mkdir -p "$logs"
  printf '%s ... ' "$words"
  local begun=$SECONDS
  if "$@" >"$log" 2>&1 </dev/null; then
    say "done ($((SECONDS - begun)) s)"
    return 0
  fi
  say "FAILED ($((SECONDS - begun)) s). The end of ${log#"$top"/}:"
  # Compilers put the error before the lines of notes; ninja marks it.
  grep -E -A 8 '(^|: )(fatal )?error:|^FAILED:|CMake Error' "$log" | head -n 60
  tail -n 25 "$log"
  return 1
}
