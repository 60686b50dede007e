#!/usr/bin/env bash
# The pages of a built folder driven in Chromium: `.ci/page.sh OUT [PICTURES]`. What is missing on a clean machine is installed.
set -euo pipefail
here="$(cd "$(dirname "$0")/page" && pwd)"
scratch="$(mktemp -d)"
trap 'rm -rf "$scratch"' EXIT

missing=()
command -v node >/dev/null || missing+=(nodejs)
command -v npm >/dev/null || missing+=(npm)
command -v chromium >/dev/null || command -v chromium-browser >/dev/null || command -v google-chrome >/dev/null || missing+=(chromium)
if ((${#missing[@]})); then
    DEBIAN_FRONTEND=noninteractive apt-get update -qq
    DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}"
fi

# Libraries beside a copy of the script, so that nothing is left in the project.
cp "$here"/package.json "$here"/package-lock.json "$here"/page.mjs "$scratch/"
npm ci --prefix "$scratch" --no-audit --no-fund --ignore-scripts --loglevel=error >/dev/null
node "$scratch/page.mjs" "$@"
