# What all languages share: marks of the trade and the order of parts. A language's own file goes before this one.
# Slots and BY: see wording/languages/frames.py. Source of the marks: as for English (terms/phrases/en.toml).
is_many = { $n-n ->
    [one] no
   *[other] yes
}
sizes = { $first } ({ $rest })
size_sep = ,{ " " }
dash = –
one = 1
unfilled = { "{" }{ $name }{ "}" }
label_one = { $word } { $first }{ $side }:{ " " }
label_two = { $word } { $first }{ and }{ $last }{ $side }:{ " " }
label_alternate = { $word } { $first }{ and_alternate }{ $side }:{ " " }
label_even = { even_rows }{ $side }:{ " " }
label_odd = { odd_rows }{ $side }:{ " " }
label_range = { $word } { $first }–{ $last }{ $side }:{ " " }
side = { " " }({ $side })
make_bare = { $n } { BY($stitch-t, tog: "× ", other: "") }{ $stitch }
make_one_bare = { BY($stitch-t, tog: "", other: "1 ") }{ $stitch }
make = { $n } { BY($stitch-t, tog: "× ", other: "") }{ $stitch } { $place }
make_one = { BY($stitch-t, tog: "", other: "1 ") }{ $stitch } { $place }
make_times = [{ $stitch }] { $times }
together_times = { $times } { $stitch }
group = ({ $parts }) { $place }
group_times = [{ $parts }] { $times } { $place }
group_bare = ({ $parts })
named = { $group } ({ $name })
bracket = [{ $parts }] { $times }
count = { $n } { $stitch }
counts = { " " }({ $all })
sep = ,{ " " }
join_sep = ;{ " " }
sentence_end = .
rows_range = { $a }–{ $b }
order_times = { " " }{ $times }
head_line = { $name }: { $value }
defines = { $short } = { $long }
list_sep = ,{ " " }
in_pattern_n = { $n } { $stitch }
