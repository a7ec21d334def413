# Sourced by setup-and-demo.sh and tests/setup-and-test.sh, with $root set to the project's folder: installs the Debian
# packages that are missing and builds. Safe to run again.

build_packages='
  build-essential meson ninja-build pkgconf gettext
  libglib2.0-dev libgtk-4-dev libgeos-dev libglpk-dev libsqlite3-dev libxml2-dev libcairo2-dev libpango1.0-dev libpoppler-glib-dev
  adwaita-icon-theme fonts-dejavu-core
'
test_packages='
  python3 libxml2-utils poppler-utils locales git clang-format-14
  xvfb xauth xdotool dbus dbus-daemon desktop-file-utils appstream
'

# Runs a command as root: as it is, or with sudo.
as_root ()
{
  if [ "$(id -u)" -eq 0 ]; then
    env DEBIAN_FRONTEND=noninteractive "$@"
  elif command -v sudo >/dev/null 2>&1; then
    sudo env DEBIAN_FRONTEND=noninteractive "$@"
  else
    echo "These packages are missing and sudo is not there to install them:$missing" >&2
    echo "As root, run: apt-get install$missing" >&2
    exit 1
  fi
}

# install_packages PACKAGE...: those that are not there yet.
install_packages ()
{
  missing=
  for package; do
    case "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" in
      installed) ;;
      *) missing="$missing $package" ;;
    esac
  done
  if [ -z "$missing" ]; then
    return
  fi
  echo "Installing:$missing"
  as_root apt-get update -q
  # $missing is a list: it is meant to be split.
  as_root apt-get install -q -y --no-install-recommends $missing
}

# configure_program FOLDER [MESON OPTION...]: the first time.
configure_program ()
{
  folder=$1
  shift
  if [ ! -f "$folder/build.ninja" ]; then
    meson setup "$@" "$folder" "$root"
  fi
}

# build_program FOLDER: configures it the first time, builds what changed.
build_program ()
{
  configure_program "$1"
  ninja -C "$1"
}
