#!/bin/sh
# Renders the demo photos of the house on Quarry Road and writes their camera tags.
#   ./render.sh            all pictures
#   ./render.sh roof back  only the named scenes
# Needs povray 3.7, ImageMagick and exiftool, and for photos kept as HEIC what ../as-heic.sh needs. WIDTH_LONG sets the rendered long
# side (default 1200; pictures are always stored with a long side of 1600).
# KEEP=dir keeps the raw renderings there and uses them again if they exist.
set -eu
cd "$(dirname "$0")"
OUT=../../../content/quarry-road/photos
LONG=${WIDTH_LONG:-1200}
SHORT=$((LONG * 3 / 4))
TMP=$(mktemp -d)
trap 'rm -rf "$TMP"' EXIT
RAW=${KEEP:-$TMP}
mkdir -p "$OUT" "$RAW"

# tone curve: soft shoulder, then a little contrast
convert -size 1x2048 gradient:black-white \
  -fx 'l=u<=0.04045?u/12.92:pow((u+0.055)/1.055,2.4); m=(1-exp(-1.1*l))/(1-exp(-1.1)); m<=0.0031308?12.92*m:1.055*pow(m,1/2.4)-0.055' \
  -sigmoidal-contrast 4.2x50% "$TMP/curve.png"

# scene | file | date time | zone | orientation | portrait | red gain | blue gain | grain
list() { cat <<'LIST'
living-before|IMG_0412.jpg|2026:02:18 10:14:09|-05:00|1|0|1.015|0.97|0.34
kitchen-before|IMG_0415.jpg|2026:02:18 10:21:44|-05:00|1|0|1.02|0.955|0.34
bath-before|IMG_0419.jpg|2026:02:18 10:37:20|-05:00|3|0|1.015|0.965|0.34
cellar-stair-before|IMG_0427.heic|2026:02:19 15:52:31|-05:00|6|1|1.01|0.97|0.43
furnace-label|IMG_0433.jpg|2026:02:20 09:41:02|-05:00|3|0|1.0|0.98|0.37
electrical-panel|IMG_0436.jpg|2026:02:20 09:55:47|-05:00|8|1|1.005|0.985|0.37
porch-steps-before|IMG_0448.jpg|2026:02:21 11:26:15|-05:00|1|0|0.99|1.015|0.31
water-heater|IMG_0573.jpg|2026:04:09 16:33:58|-04:00|6|1|1.005|0.98|0.37
water-heater-label|IMG_0574.png|2026:04:09 16:36:12|-04:00|1|0|1.0|0.985|0
roof|IMG_0588.jpg|2026:04:17 10:48:26|-04:00|1|0|1.0|1.0|0.28
living-after|IMG_0641.heic|2026:05:03 10:08:40|-04:00|1|0|1.01|0.985|0.31
kitchen-after|IMG_0678.jpg|2026:05:16 10:31:17|-04:00|1|0|1.01|0.985|0.31
cellar-stair-after|IMG_0690.heic|2026:05:20 15:40:55|-04:00|6|1|1.01|0.975|0.40
bath-after|IMG_0712.heic|2026:05:30 10:19:33|-04:00|1|0|1.0|0.995|0.31
half-bath|IMG_0719.jpg|2026:06:02 11:05:08|-04:00|8|1|1.005|0.985|0.31
porch-steps-after|IMG_0733.jpg|2026:06:07 11:12:50|-04:00|1|0|1.01|0.985|0.28
bedroom3|IMG_0741.jpg|2026:06:11 09:47:29|-04:00|1|0|1.005|0.985|0.31
front|IMG_0752.jpg|2026:06:14 10:22:03|-04:00|1|0|1.01|0.985|0.28
back|IMG_0755.jpg|2026:06:14 16:41:36|-04:00|3|0|1.015|0.975|0.28
LIST
}

list > "$TMP/list"
N=0
while IFS='|' read -r SCENE FILE WHEN ZONE ORI PORT RED BLUE GRAIN; do
  N=$((N + 1))
  if [ $# -gt 0 ]; then
    case " $* " in *" $SCENE "*) ;; *) continue ;; esac
  fi
  if [ "$PORT" = 1 ]; then W=$SHORT; H=$LONG; SIZE=1200x1600; else W=$LONG; H=$SHORT; SIZE=1600x1200; fi
  # clapboards need finer sampling than rooms do
  case "$SCENE" in front | back) AA="+A0.15 +AM1 +R3" QUALITY=77 ;; roof | porch-steps-after) AA="+A0.28 +AM1 +R2" QUALITY=78 ;; *) AA="+A0.28 +AM1 +R2" QUALITY=84 ;; esac
  if [ ! -s "$RAW/$SCENE.png" ]; then
    povray "$SCENE.pov" "+O$TMP/part.png" "+W$W" "+H$H" -D -GA +WT1 $AA +BM2 +FN16 >"$TMP/$SCENE.log" 2>&1 ||
      { tail -20 "$TMP/$SCENE.log"; exit 1; }
    mv "$TMP/part.png" "$RAW/$SCENE.png"
  fi
  # tone, colour cast, soft corners, grain
  convert "$RAW/$SCENE.png" "$TMP/curve.png" -clut -depth 16 -contrast-stretch 0.1%x0.35% -filter Lanczos -resize "$SIZE!" \
    -channel R -evaluate multiply "$RED" -channel B -evaluate multiply "$BLUE" +channel \
    -modulate 100,112 "$TMP/a.png"
  convert -size "$SIZE" radial-gradient:white-black -function Polynomial "-0.17,0.34,0.83" "$TMP/v.png"
  convert "$TMP/a.png" "$TMP/v.png" -compose multiply -composite "$TMP/b.png"
  if [ "$GRAIN" != 0 ]; then
    convert -size "$SIZE" xc:gray50 -seed "$N" -attenuate "$GRAIN" +noise Gaussian -blur 0x0.7 "$TMP/g.png"
    convert "$TMP/b.png" "$TMP/g.png" -compose overlay -composite -unsharp 0x0.8+0.5+0.01 "$TMP/c.png"
  else
    convert "$TMP/b.png" -unsharp 0x0.8+0.5+0.01 "$TMP/c.png"
  fi
  case "$FILE" in *.heic) PHOTO=photo.jpg ;; *) PHOTO="photo.${FILE##*.}" ;; esac
  # store turned, so that the orientation tag sets it upright again
  case "$ORI" in 6) TURN=270 ;; 8) TURN=90 ;; 3) TURN=180 ;; *) TURN=0 ;; esac
  convert "$TMP/c.png" -rotate "$TURN" +repage -strip -depth 8 -sampling-factor 4:2:0 -quality "$QUALITY" "$TMP/$PHOTO"
  exiftool -q -overwrite_original \
    -Make="Example Camera Co" -Model="EX-1" -SerialNumber="EX-0000-0000" \
    -Orientation#="$ORI" -DateTimeOriginal="$WHEN" -CreateDate="$WHEN" -OffsetTimeOriginal="$ZONE" \
    -ISO=$((80 + N * 7 % 5 * 60)) -FNumber=1.9 -FocalLength=4.3 -FocalLengthIn35mmFormat=26 \
    -GPSLatitude="41.0000$((N % 7 + 1))" -GPSLatitudeRef=N -GPSLongitude="81.0000$((N * 3 % 8 + 1))" -GPSLongitudeRef=W \
    "$TMP/$PHOTO"
  # some photos as a phone keeps them that writes HEIC
  case "$FILE" in *.heic) sh ../as-heic.sh "$TMP/$PHOTO" "$OUT/$FILE" ;; *) cp "$TMP/$PHOTO" "$OUT/$FILE" ;; esac
  # the button was pressed twice
  if [ "$FILE" = IMG_0641.heic ]; then
    convert "$TMP/$PHOTO" -distort SRT '0,0 1.02 0.25 -12,-7' -strip -quality 88 "$TMP/second.jpg"
    exiftool -q -overwrite_original -tagsfromfile "$TMP/$PHOTO" -all:all "$TMP/second.jpg"
    exiftool -q -overwrite_original -DateTimeOriginal="2026:05:03 10:08:41" -CreateDate="2026:05:03 10:08:41" "$TMP/second.jpg"
    sh ../as-heic.sh "$TMP/second.jpg" "$OUT/IMG_0642.heic"
  fi
  echo "$FILE  $SCENE"
done < "$TMP/list"
