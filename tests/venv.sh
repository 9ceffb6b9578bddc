# Sourced: a Python package of a fixed version in an environment of its own under target/, made once.
# Where CI=true it must be there; elsewhere the caller's checks are left out.

# venv PACKAGE VERSION: sets `env` to the environment's folder.
venv() {
    env=target/second-opinion/$1-$2
    [[ -x $env/bin/python ]] && return
    python3 -m venv "$env" && "$env/bin/pip" install --quiet --disable-pip-version-check "$1==$2" && return
    rm -rf "$env"
    if [[ "${CI:-}" == true ]]; then
        echo "error: $1 $2 cannot be installed"
        exit 1
    fi
    echo "left out: $1 $2 cannot be installed"
    exit 0
}
