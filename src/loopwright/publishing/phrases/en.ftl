# Words of pages in English. Terms of stitches stand elsewhere. Spelling is the same in US and UK terms, but for one or two words.
decimal = .
list-separator = ,{" "}
size-separator = ,{" "}

# Headings of parts, in the order of the trade
part-sizes = Sizes and finished measurements
part-materials = Materials
part-gauge = { $word ->
    [tension] Tension
   *[gauge] Gauge
}
part-abbreviations = Abbreviations
part-special = Special stitches
part-notes = Notes
part-schematic = Schematic
part-instructions = Instructions
part-charts = Charts
part-finishing = Finishing
part-care = Care
part-cautions = Cautions
part-help = Help
part-changes = Changes
part-version = About this pattern
part-terms-of-use = Terms of use

# Sizes
size = Size
sizes = Sizes
to-fit = to fit { $measure }
finished = Finished, laid flat
worn = Worn
measure-of = { $section }, { $measure }
whole = Whole piece
yarn = Yarn
yarn-of = Yarn { $colour }
metres = m
balls = balls
ball-note = One ball is { $grams } g or { $metres } m. Metres are reckoned from the stitches; the need lies between the two numbers, and balls are for the higher one.
ball-note-plain = Metres are reckoned from the stitches; the need lies between the two numbers.
hours = Time
hours-unit = hours
in-cm = cm (inches in brackets)
open-chain-note = How long the chain is may be chosen; the counts, charts and measurements here are those of a sample on { $n } chains.
worked-in = The sample was worked in size { $size }.
all-sizes-note = Numbers are given for the sizes in this order: { $sizes }. One number alone is for all of them.

# Materials and gauge
hook = Hook
notions = Notions
materials-yarn = Yarn
gauge-stitch = One { $stitch } is { $width } mm wide, a row of them { $height } mm tall.
gauge-other = Another gauge
gauge-other-note = What the first measurement comes to when the stitches are smaller or larger. If yours is off, change the hook first; a row in between says which size to make instead.
gauge-other-corner = { $stitches } sts to 10 cm
gauge-guess = No swatch is told: this is what the yarn and the hook usually give.

# Notes
terms-note = Written in { $terms } terms.
terms-us = US
terms-uk = UK
terms-old = old British
repeats-note = What stands after * is repeated as often as it says; ( ) holds what goes into one place, [ ] what is repeated so many times.
left-handed-note = For left-handed makers: the words are the same, rows run the other way and rounds go clockwise. Charts are mirrored, their numbers are not.
spelled-out-note = Repeats are written out in full.

# Instructions
measure-now = Measure now: { $what }.
tick = Worked
notes-of-mine = My notes
your-column = Colour in your column; read only its numbers.
every-size = every size
not-in-this-size = not in this size
choose-size = Size
all-sizes = All sizes
film = Film
film-at = The film is at { $address }.

# Pictures
photograph-alt = { $title }, finished
cover-alt = { $title }, as its stitches make it
chart-caption = { $section }
chart-of = Chart of { $section }
schematic-alt = Schematic of { $title }
in-words = In words

# Ends
corrections-at = Corrections are kept at { $address }.
version-line = Version { $version }
version-dated = Version { $version }, { $date }
draft = Draft
page-of = page { $page } of { $pages }
made-by = Design: { $author }
meets = This edition is set in { $points } point type, one column, without italics; every count is in the words, and nothing depends on colour or on a picture.
unchecked-terms = These terms are still to be checked by a native maker: { $terms }.
description-of = In words
own-words-note = The designer's own words are in { $language }.
no-pictures = The pictures are left out of this edition.

# Names of measures
measure-across = across
measure-around = around
measure-depth = depth
measure-width = width
measure-height = height
measure-length = length
measure-width-at-the-start = width at the start
measure-width-at-the-end = width at the end
measure-around-at-the-start = around at the start
measure-around-at-the-end = around at the end
measure-opening-around = opening around
measure-around-worn = around, worn
measure-depth-worn = depth, worn
measure-length-worn = length, worn

# Measures of the body
body-head-circumference = head
body-chest = chest
body-foot-length = foot length
body-foot-circumference = foot, around
body-hand-circumference = hand, around

# The web page and the EPUB
web-skip = Skip to the instructions
web-contents = In this pattern
web-of = { $n } of { $all }
web-of-all = of { $all }
web-done = { $row } done
web-done-of = { $row }, { $n } of { $all } done
web-back = Back one row
web-finished = Every row is worked.
web-kept = Ticks are kept in this browser, for each size.
web-not-kept = Ticks cannot be kept in this browser: they last as long as this page is open.
web-untick = Take all ticks out
web-undo = Put the ticks back
web-larger = As large as it is drawn
epub-summary = All text can be made larger and read aloud. Every picture has a description in words, every chart is also told row by row, tables have heads, and nothing depends on colour.
