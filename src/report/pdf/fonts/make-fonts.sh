#!/bin/sh
# Makes the two faces of the report from Debian's fonts-noto-core, with Debian's fonttools. Run here, by hand, to change
# what they cover: Latin, Greek and Cyrillic with diacritics, punctuation, currency, arrows, minus, check marks.
set -eu
source=/usr/share/fonts/truetype/noto
work=$(mktemp -d)
letters=U+20-7E,U+A0-24F,U+300-36F,U+370-3FF,U+400-52F,U+1E00-1EFF
marks=U+2010-2015,U+2018-201F,U+2020-2022,U+2026,U+2030,U+2032,U+2033,U+2039,U+203A,U+2044,U+2070-208E,U+20A0-20BF,U+2116,U+2122
options="--layout-features= --no-hinting --desubroutinize --name-IDs=0,1,2,4,6,13,14 --notdef-outline --no-glyph-names --drop-tables+=GPOS,GSUB,GDEF"
for weight in Regular Bold; do
  pyftsubset $source/NotoSans-$weight.ttf --unicodes=$letters,$marks $options --output-file=$work/letters.ttf
  pyftsubset $source/NotoSansSymbols-$weight.ttf --unicodes=U+2190-2193 $options --output-file=$work/arrows.ttf
  pyftsubset $source/NotoSansSymbols2-Regular.ttf --unicodes=U+2713,U+2717 $options --output-file=$work/checks.ttf
  pyftsubset $source/NotoSansMath-Regular.ttf --unicodes=U+2212,U+2260,U+2264,U+2265 $options --drop-tables+=MATH --output-file=$work/signs.ttf
  fonttools merge --output-file=$work/merged.ttf $work/letters.ttf $work/arrows.ttf $work/checks.ttf $work/signs.ttf
  pyftsubset $work/merged.ttf --unicodes='*' $options --output-file=report-$(echo $weight | tr A-Z a-z).ttf
done
rm -r "$work"
