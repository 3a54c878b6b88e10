#!/bin/sh
# What every change goes through, the same on any machine; the files of the code hosts call these steps too.
#   sh ci.sh check          every record: ends with 1 if one has a problem
#   sh ci.sh review BASE    what the changes since the revision BASE do for whoever works at the car, into review.md
#   sh ci.sh build          the site, into site/
#   sh ci.sh publish DIR    the site into a folder that a web server shows; the one that is there stays whole until the new one is
#   sh ci.sh take           the answers in claims/ into the records
#   sh ci.sh all BASE       check, review and build
set -eu
cd "$(dirname "$0")"

# The versions that requirements.txt names, in a folder of their own, unless undertrim is installed already.
ready() {
    command -v undertrim >/dev/null && return
    if [ ! -x .venv/bin/undertrim ]; then
        "${PYTHON:-python3}" -m venv .venv
        .venv/bin/python -m pip --disable-pip-version-check --quiet install --requirement requirements.txt
    fi
    PATH="$PWD/.venv/bin:$PATH"
}

check() {
    if [ -n "${GITHUB_ACTIONS:-}" ]; then
        undertrim check --format github
    else
        undertrim check
    fi
}

review() {
    undertrim review "$1" --format markdown >review.md || [ $? -eq 1 ] # 1: something got worse, which the text says
    cat review.md
}

# Each file by itself, and only plain ones: a link could lead anywhere. What was taken once is moved away, so that a second run finds nothing to do.
take() {
    for file in claims/*.json claims/*.csv claims/*.xlsx; do
        if [ ! -f "$file" ] || [ -L "$file" ]; then
            continue
        fi
        mkdir -p claims/taken claims/refused
        name=${file##*/}
        left="claims/refused/${name%.*}-left.json"
        rm -f "$left"
        code=0
        undertrim take --left "$left" "$file" || code=$?
        [ "$code" -le 1 ] || exit "$code"
        if [ "$code" -eq 1 ] && [ ! -e "$left" ]; then
            mv "$file" claims/refused/ # it could not be read at all
        else
            mv "$file" claims/taken/
        fi
    done
    check
}

step=${1:-}
case $step in
    check | build | take) [ $# -eq 1 ] || step= ;;
    review | publish | all) [ $# -eq 2 ] || step= ;;
    *) step= ;;
esac
if [ -z "$step" ]; then
    sed -n 's/^#   //p' "$0" >&2
    exit 2
fi

ready
case $step in
    check) check ;;
    review) review "$2" ;;
    build) undertrim build ;;
    publish) undertrim build --out "$2" ;;
    take) take ;;
    all)
        check
        review "$2"
        undertrim build
        ;;
esac
