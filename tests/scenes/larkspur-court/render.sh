#!/bin/sh
# Renders the Larkspur Court pictures again and writes their camera tags.
# Needs povray, ImageMagick and exiftool. Everything in these pictures is
# invented: the house, the camera, the serial number and the coordinates.
#
#   ./render.sh                  all pictures
#   ./render.sh kitchen-before   only the named scenes
#   RAW=raw ./render.sh          keep the raw 16-bit renders in ./raw and use
#                                those that are newer than their .pov (delete after an .inc change)
#   THREADS=2 SCALE=4 ./render.sh   threads for povray; a quick look at 1/4 size
set -eu
cd "$(dirname "$0")"
OUT=${OUT:-../../../content/larkspur-court/photos}
THREADS=${THREADS:-2}
SCALE=${SCALE:-1}
if [ -n "${RAW:-}" ]; then TMP=$RAW; mkdir -p "$TMP"; else TMP=$(mktemp -d); trap 'rm -rf "$TMP"' EXIT; fi
mkdir -p "$OUT"

# scene | size | exposure | file | orientation | taken | red, blue balance
list() { cat <<'LIST'
living-before|1600x1200|1.80|PXL_0118.jpg|3|2025:01:20 10:12:41|1.010 0.985
kitchen-before|1600x1200|1.50|PXL_0121.jpg|1|2025:01:20 10:19:05|1.015 0.975
bath-before|1200x1600|1.30|PXL_0126.jpg|6|2025:01:20 10:31:27|1.015 0.980
laundry-found|1200x1600|1.60|PXL_0131.jpg|8|2025:01:21 09:44:10|1.015 0.975
water-heater-found|1200x1600|1.50|PXL_0137.jpg|6|2025:01:21 10:02:53|1.005 0.985
heat-pump-found|1600x1200|1.05|PXL_0142.jpg|1|2025:01:22 09:15:36|1.005 0.990
heat-pump-label|1600x1200|1.20|PXL_0143.png|1|2025:01:22 09:16:22|1.000 0.990
pool-barrier-before|1600x1200|1.15|PXL_0150.jpg|1|2025:01:25 15:08:19|1.010 0.985
roof-during|1600x1200|1.05|PXL_0207.jpg|3|2025:03:12 08:41:02|1.005 0.990
pool-barrier-after|1600x1200|1.15|PXL_0233.jpg|1|2025:04:16 15:22:47|1.010 0.985
bath-after|1200x1600|1.55|PXL_0261.jpg|1|2025:05:21 13:05:30|1.000 0.995
kitchen-after|1600x1200|1.50|PXL_0288.jpg|1|2025:06:10 11:37:14|1.005 0.990
living-after|1600x1200|1.75|PXL_0304.jpg|1|2025:06:24 10:50:08|1.005 0.990
bedroom2-after|1600x1200|1.75|PXL_0309.jpg|1|2025:06:25 09:27:55|0.998 1.000
family-after|1600x1200|1.50|PXL_0312.jpg|1|2025:06:25 09:58:33|1.005 0.990
garden-after|1600x1200|1.20|PXL_0335.jpg|1|2025:07:08 17:21:16|1.010 0.985
front-after|1600x1200|1.15|PXL_0341.jpg|1|2025:07:09 07:36:49|1.012 0.980
LIST
}

expose() { # exposure in out size: filmic tone curve, applied as a look-up table
  convert -size 1x4096 gradient: -rotate 180 -fx "aa=(u<0.04045?u/12.92:((u+0.055)/1.055)^2.4)*$1; bb=(aa*(2.51*aa+0.03))/(aa*(2.43*aa+0.59)+0.14); cc=bb>1?1:bb; cc<0.0031308?12.92*cc:1.055*cc^(1/2.4)-0.055" "$TMP/curve.png"
  convert "$2" -set colorspace sRGB "$TMP/curve.png" -clut -filter Mitchell -resize "$4!" "$3"
}

n=0
list | while IFS='|' read -r scene size ev file orient taken wb; do
  n=$((n + 1))
  if [ $# -gt 0 ]; then case " $* " in *" $scene "*) ;; *) continue ;; esac; fi
  [ -f "$scene.pov" ] || continue
  w=$((${size%x*} / SCALE)); h=$((${size#*x} / SCALE))
  raw=$TMP/$scene.png
  # the indoor pictures are slow: they are rendered at 4/5 and enlarged
  rw=$w; rh=$h
  case $scene in kitchen*|bath*|living*|family*|bedroom*|laundry*) rw=$((w * 4 / 5)); rh=$((h * 4 / 5)) ;; esac
  if [ ! -f "$raw" ] || [ "$scene.pov" -nt "$raw" ]; then
    echo "$scene: render"
    povray "$scene.pov" "+W$rw" "+H$rh" +FN16 "+O$raw" "+WT$THREADS" -D +Q9 +A0.25 +AM1 +R2 -GA >/dev/null 2>"$TMP/$scene.log" || { tail -5 "$TMP/$scene.log" >&2; exit 1; }
  fi
  expose "$ev" "$raw" "$TMP/exposed.png" "${w}x${h}"
  # white balance, vignette, grain
  convert -size "${w}x${h}" radial-gradient:white-gray62 -level 0,100% "$TMP/vignette.png"
  amount=0.13; case $file in *.png) amount=0.03 ;; esac
  convert "$TMP/exposed.png" -modulate 100,90 \
    -channel R -evaluate multiply "${wb% *}" -channel B -evaluate multiply "${wb#* }" +channel \
    \( "$TMP/vignette.png" -evaluate multiply 0.35 -evaluate add 65% \) -compose Multiply -composite \
    \( -seed "$((n * 7 + 3))" -size "${w}x${h}" xc:gray50 -attenuate "$amount" +noise Gaussian -colorspace Gray -blur 0x0.6 \) -compose Overlay -composite \
    -unsharp 0x0.8+0.35+0.01 -depth 8 "$TMP/final.png"
  case $orient in
    6) turn="-rotate -90" ;; 8) turn="-rotate 90" ;; 3) turn="-rotate 180" ;; *) turn="" ;;
  esac
  rm -f "$OUT/$file"
  # shellcheck disable=SC2086
  convert "$TMP/final.png" $turn +repage -strip -define png:exclude-chunks=date,tIME -sampling-factor 2x2 -quality 84 "$OUT/$file"
  if [ "${file##*.}" = jpg ] && [ "$(wc -c <"$OUT/$file")" -gt 345000 ]; then
    # shellcheck disable=SC2086
    convert "$TMP/final.png" $turn +repage -strip -sampling-factor 2x2 -quality 79 "$OUT/$file"
  fi
  lat=$(printf '33.000%02d' $((n * 37 % 90 + 5))); lon=$(printf '112.000%02d' $((n * 53 % 90 + 5)))
  exiftool -q -overwrite_original -n \
    -Make="Example Camera Co" -Model="EX-2" -SerialNumber="EX-0000-0001" \
    -DateTimeOriginal="$taken" -CreateDate="$taken" -ModifyDate="$taken" \
    -OffsetTimeOriginal="-07:00" -OffsetTimeDigitized="-07:00" -OffsetTime="-07:00" \
    -Orientation="$orient" \
    -GPSLatitude="$lat" -GPSLatitudeRef=N -GPSLongitude="$lon" -GPSLongitudeRef=W \
    "$OUT/$file"
  echo "$scene: $file $(wc -c <"$OUT/$file") bytes"
done
