#!/bin/sh
# Makes of a JPEG what a phone that writes HEIC would have kept: HEVC, colours in Display P3, the turning in the
# container as well as in the EXIF tag, the camera's other tags as they were.
#   as-heic.sh IN.jpg OUT.heic
# Needs heif-enc (Debian: libheif-examples), exiftool and node with this project's packages.
set -eu
ROOT=$(cd "$(dirname "$0")/../.." && pwd)
TMP=$(mktemp -d)
trap 'rm -rf "$TMP"' EXIT
case "$(exiftool -s3 -n -Orientation "$1")" in 6) QUARTERS=3 ;; 8) QUARTERS=1 ;; 3) QUARTERS=2 ;; *) QUARTERS=0 ;; esac
(cd "$ROOT" && node --input-type=module -e '
  const { default: sharp } = await import("sharp");
  const [, from, to] = process.argv;
  await sharp(from).withIccProfile("p3").jpeg({ quality: 97, chromaSubsampling: "4:4:4" }).toFile(to);
' "$(realpath "$1")" "$TMP/p3.jpg")
exiftool -q -overwrite_original -tagsfromfile "$1" -all:all --icc_profile "$TMP/p3.jpg"
heif-enc -q 58 "$TMP/p3.jpg" -o "$TMP/p3.heic" >/dev/null 2>&1
if [ "$QUARTERS" = 0 ]; then cp "$TMP/p3.heic" "$2"; else node "$ROOT/tests/tools/turn-heic.mjs" "$TMP/p3.heic" "$2" "$QUARTERS"; fi
