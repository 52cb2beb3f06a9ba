# What drawings say in Dutch: all from memory, to be checked by a native maker. Terms of stitches stand elsewhere.

# Charts
drawn-chart = Telpatroon
drawn-symbol-chart = { $name }: telpatroon
drawn-shape-disc = Toeren rond een midden
drawn-shape-oval = Toeren rond beide kanten van een lossenketting
drawn-shape-rows = Heen en weer gaande toeren
drawn-shape-edge = Rond de rand van het deel gehaakt
drawn-shape-unrolled = Toeren, uitgerold
drawn-shape-3 = Toeren van een driehoek
drawn-shape-4 = Toeren van een vierkant
drawn-shape-5 = Toeren van een vijfhoek
drawn-shape-6 = Toeren van een zeshoek
drawn-shape-8 = Toeren van een achthoek
drawn-shape-n = Toeren van een vorm met { $n } hoeken
drawn-begins = { $name }. { $shape }, gezien vanaf de goede kant.
drawn-begins-on = Begint op { $n } l.
drawn-begins-on-ring = Begint op { $n } l, tot een ring gesloten.
drawn-next-round = Volgende toer
drawn-next-row = Volgende toer
drawn-row = Toer
drawn-a-row = een toer
drawn-the-chain = de lossenketting
drawn-right-side = goede kant
drawn-wrong-side = verkeerde kant
drawn-clockwise = met de klok mee
drawn-counter-clockwise = tegen de klok in
drawn-left-to-right = van links naar rechts
drawn-right-to-left = van rechts naar links
drawn-with-yarn = garen { $yarns }
drawn-row-told = { $head }: { $worked }.
drawn-row-told-count = { $head }: { $worked } ({ $count }).
drawn-underside = { $made } (aan de andere kant van de lossenketting)
drawn-with-picot = { $made } met 1 { $picot }
drawn-made-alike = { $n } stuks, gelijk
drawn-made-mirrored = { $n } stuks, in spiegelbeeld
drawn-make = { $n } stuks
drawn-too-many = Het geheel heeft { $n } steken, te veel om te tonen: dit is de herhaling.
drawn-piece-closes = Het deel sluit zich: na { $row } is het niet plat te tekenen, daarom zijn de toeren uitgerold.
drawn-piece-stands-up = Het deel komt omhoog: na { $row } is het niet plat te tekenen, daarom zijn de toeren uitgerold.
drawn-last-round = de laatste toer
drawn-shown = Getoond: { $what }.
drawn-whole-rows = hele toeren
drawn-rows-shown = { $first } t/m { $last }
drawn-rows-of = { $rows } van { $n }
drawn-left-out-between = { $n ->
    [one] de herhaling met haar randen, { $n } herhaling weggelaten ertussen
   *[other] de herhaling met haar randen, { $n } herhalingen weggelaten ertussen
}
drawn-left-out-at-line = { $n ->
    [one] de herhaling met haar randen, { $n } herhaling weggelaten bij de stippellijn
   *[other] de herhaling met haar randen, { $n } herhalingen weggelaten bij de stippellijn
}
drawn-left-out-middle = de herhaling met haar randen, de herhalingen in het midden weggelaten bij de stippellijn
drawn-plain-left-out = { $n ->
    [one] { $many } gewone steken van elke toer weggelaten bij de stippellijn
   *[other] { $many } gewone steken van elke toer weggelaten bij de stippellijnen
}
drawn-ends-shown = beide uiteinden van de toeren, { $n } tekens weggelaten in de ruimte ertussen
drawn-edge-left-out = hoeken en uiteinden van de rand, { $n } tekens weggelaten bij de stippellijnen
drawn-in-grey = In grijs: de rand waar omheen gehaakt wordt.
drawn-unrolled = In het rond gehaakt; uitgerold getekend, elke toer wordt in dezelfde richting gelezen.
drawn-own-stitch = { $n }: { $words }
drawn-row-unread = { $row } kon niet gelezen worden: ‘{ $words }’.
drawn-rows-unread = { $n } andere toeren konden niet gelezen worden.
drawn-unread-one = { $row } niet gelezen
drawn-unread-range = { $first } t/m { $last } niet gelezen
drawn-drawn-up-to = Het telpatroon is tot daar getekend.
drawn-begins-after = Het telpatroon begint daarna, op steken die er geweest moeten zijn.
drawn-between-dashes = Tussen de streepjeslijnen, in totaal { $n } keer: { $rows }
drawn-row-counts = { $row }: { $count }
drawn-yarn-rows = Garen { $yarn }: { $rows }
drawn-rs = GK
drawn-ws = VK
drawn-back-loop = alleen in de achterste lus
drawn-front-loop = alleen in de voorste lus
drawn-third-loop = derde lus
drawn-worked-on-ws = { $seen } (aan de verkeerde kant: { $worked })
drawn-front-and-back = De symbolen tonen het werk gezien vanaf de goede kant: in toeren aan de verkeerde kant wisselen voor en achter van plaats.
drawn-ring-sign = ring waarin de eerste toer gehaakt wordt
drawn-cut-sign = afhechten
drawn-join-sign = garen aanhechten
drawn-yarn-named = garen { $name }

# Grids
drawn-grid-filet = Filetraster
drawn-grid-colour = Kleurenraster
drawn-grid-corner = Raster van hoek naar hoek
drawn-drawn-as-filet = Getekend als filetraster.
drawn-drawn-as-colour = Getekend als kleurenraster.
drawn-drawn-as-corner = Getekend als raster van hoek naar hoek.
drawn-grid-chart = { $name }: { $kind }
drawn-square-filet = Een hokje is een maas van het net, { $n } steken breed.
drawn-square-corner = Een hokje is een blok van { $stitch }.
drawn-square-colour = Een hokje is 1 { $stitch }.
drawn-space = { $n ->
    [one] { $n } leeg
   *[other] { $n } lege
}
drawn-block = { $n ->
    [one] { $n } vol
   *[other] { $n } volle
}
drawn-upper-right-to-lower-left = van rechtsboven naar linksonder
drawn-upper-left-to-lower-right = van linksboven naar rechtsonder
drawn-lower-left-to-upper-right = van linksonder naar rechtsboven
drawn-lower-right-to-upper-left = van rechtsonder naar linksboven
drawn-space-means-us = leeg: { $n } l, { $n } st overslaan, 1 { $stitch } in de volgende st
drawn-space-means-uk = { drawn-space-means-us }
drawn-block-means = vol: 1 { $stitch } in elk van { $n } st
drawn-yarn-unnamed = { $sign }: het garen zonder naam
drawn-yarn-sign = { $sign }: { $name }
drawn-in-all = { $what } (in totaal { $n })
drawn-grid-row = { $row }, { $way } gelezen: { $cells }.
drawn-grid-row-all = { $row }, { $way } gelezen: { $cells } (in totaal { $count }).
drawn-filet-edge = De eerste steek van een toer, of de lossen die als een tellen, is de lijn aan de rand: die heeft geen hokje.
drawn-unrolled-short = In het rond gehaakt; uitgerold getekend.
drawn-squares-shown-right = Getoond: hokjes { $first } t/m { $last } van { $n }, van rechts geteld; { $rows }. Deel { $part } van { $parts }.
drawn-squares-shown-left = Getoond: hokjes { $first } t/m { $last } van { $n }, van links geteld; { $rows }. Deel { $part } van { $parts }.
drawn-repeat-shown-right = Getoond: de herhaling met haar randen, hokjes 1 t/m { $last } van { $n }, van rechts geteld; { $rows } van { $of }.
drawn-repeat-shown-left = Getoond: de herhaling met haar randen, hokjes 1 t/m { $last } van { $n }, van links geteld; { $rows } van { $of }.
drawn-repeats-across = { $n ->
    [one] Elk hokje van een toer is gelijk.
   *[other] In de breedte is het patroon na { $n } hokjes weer hetzelfde.
}
drawn-repeats-up = { $n ->
    [one] Elke toer is gelijk.
   *[other] In de hoogte is het patroon na { $n } toeren weer hetzelfde.
}
drawn-counts-of-shown = De aantallen naast een toer zijn die van de getoonde hokjes.
drawn-parts-left-out = { $n } andere delen zijn weggelaten.

# How motifs are joined
drawn-motifs-joined = Hoe de motieven verbonden worden
drawn-motifs-read-right = Hoe de motieven verbonden worden. Rijen van { $n } motieven, van links naar rechts en van boven naar beneden gelezen, gezien vanaf de goede kant.
drawn-motifs-read-left = Hoe de motieven verbonden worden. Rijen van { $n } motieven, van rechts naar links en van boven naar beneden gelezen, gezien vanaf de goede kant.
drawn-motifs-row = Rij { $row } van motieven: { $first } t/m { $last }.
drawn-motifs-row-one = Rij { $row } van motieven: { $first }.
drawn-motifs-ties = { $n ->
    [one] Een zijde wordt op { $n } plaats verbonden.
   *[other] Een zijde wordt op { $n } plaatsen verbonden.
}
drawn-motifs-order = Motieven van de eerste rij worden verbonden met dat ernaast, het eerste van een rij met dat erboven, alle andere met beide.
drawn-motifs-around = { $row } gaat om alle motieven heen.
drawn-motifs-many = { $across } motieven in de breedte en { $down } in de hoogte, { $n } in totaal, rij voor rij genummerd.
drawn-motifs-shown = Getoond: de eerste { $across } in de breedte en { $down } in de hoogte.
drawn-motifs-tied = 1 is: { $first }; 2 t/m { $n } worden verbonden in { $row }, waar korte lijnen een rand kruisen.
drawn-motifs-any-order = Een andere volgorde kan ook, zolang elk motief verbonden wordt met alle voltooide ernaast.
drawn-motifs-meet = Motieven raken elkaar waar lijnen een rand kruisen.
drawn-motifs-border = { $n ->
    [one] Eromheen, gestreept: { $name }, { $n } toer.
   *[other] Eromheen, gestreept: { $name }, { $n } toeren.
}
drawn-motif = Motief
drawn-border = rand

# Schematics
drawn-schematic = Schematekening
drawn-schematic-of = Schematekening: { $title }
drawn-sheet = { $title }, blad { $n }
drawn-size = Maat { $size }
drawn-sizes = Maten { $sizes }
drawn-arrow = Pijl: richting van het werk.
drawn-dashed = Gestreept: een vouw, of waar een deel begint.
drawn-dotted = Gestippeld: verbonden.
drawn-half = ½: plat neergelegd, de helft van omtrek of breedte.
drawn-drawn-in-size = Getekend in maat { $size }.
drawn-mirrored = Gespiegeld voor de linkerhand.
drawn-to-scale = Omtrek op schaal getekend.
drawn-to-scale-in-size = Omtrek op schaal getekend in maat { $size }.
drawn-times-as-large = { $n } keer zo groot getekend
drawn-the-piece = Het deel
drawn-piece = deel
drawn-figure-told = { $name }: { $how }.
drawn-figure-measured = { $name }: { $how }; gemeten bij { $letters }.
drawn-figure-copied = { $how }; { $copies }
drawn-measure-told = { $name }: { $values }.
drawn-measure-of = { $part }, { $measure }
drawn-whole = Geheel
drawn-in-all-of = { $measure } in totaal
drawn-front = Voorkant
drawn-cm = cm
drawn-in = inch
drawn-together-of = { $title }: hoe de delen samengaan
drawn-together = Hoe de delen samengaan
drawn-joined-to = { $name }, verbonden met { $letter }
drawn-letter-name = { $letter }: { $name }
drawn-letter-copies = { $letter }: { $name } ({ $copies })
drawn-made-disc = in toeren van het midden naar buiten gehaakt
drawn-made-oval = in toeren rond beide kanten van een lossenketting gehaakt
drawn-made-rows = in heen en weer gaande toeren van onder naar boven gehaakt
drawn-made-tie = een lossenketting waarop wordt teruggehaakt
drawn-made-tip = in toeren vanaf het midden van de bovenrand gehaakt, die bij de punt omslaan
drawn-made-half-circle = in toeren vanaf het midden van de bovenrand gehaakt, elke toer een halve cirkel
drawn-made-front = pas, lijf en mouwen zoals ze plat liggen, van voren gesloten; alles van de hals naar beneden gehaakt
drawn-made-yoke = in toeren van de hals naar beneden gehaakt, groeiend langs de lijnen waar de panden samenkomen; opengeklapt getekend
drawn-made-rounds-bottom-up = in toeren vanaf het midden van de bodem naar boven gehaakt; plat getekend
drawn-made-rounds-top-down = in toeren vanaf het midden bovenaan naar beneden gehaakt; plat getekend
drawn-made-rounds-lower-up = in toeren vanaf de onderrand naar boven gehaakt; plat getekend
drawn-made-rounds-upper-down = in toeren vanaf de bovenrand naar beneden gehaakt; plat getekend
drawn-made-filled = in toeren vanaf het midden bovenaan naar beneden gehaakt; gevuld getekend, elke toer een cirkel
drawn-made-joined = motieven naast elkaar verbonden, met de rand eromheen
