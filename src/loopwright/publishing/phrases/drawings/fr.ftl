# What drawings say in French: all from memory, to be checked by a native maker. Terms of stitches stand elsewhere.

# Charts
drawn-chart = Diagramme
drawn-symbol-chart = { $name } : diagramme
drawn-shape-disc = Tours autour d’un centre
drawn-shape-oval = Tours des deux côtés d’une chaînette
drawn-shape-rows = Rangs
drawn-shape-edge = Crocheté autour du bord de la pièce
drawn-shape-unrolled = Tours, déroulés
drawn-shape-3 = Tours d’un triangle
drawn-shape-4 = Tours d’un carré
drawn-shape-5 = Tours d’un pentagone
drawn-shape-6 = Tours d’un hexagone
drawn-shape-8 = Tours d’un octogone
drawn-shape-n = Tours d’une forme à { $n } coins
drawn-begins = { $name }. { $shape }, vus sur l’endroit.
drawn-begins-on = Commence sur { $n } ml.
drawn-begins-on-ring = Commence sur { $n } ml, fermées en rond.
drawn-next-round = Tour suivant
drawn-next-row = Rang suivant
drawn-row = Rang
drawn-a-row = un rang
drawn-the-chain = la chaînette
drawn-right-side = endroit
drawn-wrong-side = envers
drawn-clockwise = dans le sens des aiguilles d’une montre
drawn-counter-clockwise = dans le sens inverse des aiguilles d’une montre
drawn-left-to-right = de gauche à droite
drawn-right-to-left = de droite à gauche
drawn-with-yarn = fil { $yarns }
drawn-row-told = { $head } : { $worked }.
drawn-row-told-count = { $head } : { $worked } ({ $count }).
drawn-underside = { $made } (de l’autre côté de la chaînette)
drawn-with-picot = { $made } avec 1 { $picot }
drawn-made-alike = en faire { $n }, pareils
drawn-made-mirrored = en faire { $n }, en vis-à-vis
drawn-make = en faire { $n }
drawn-too-many = Le tout compte { $n } mailles, trop pour être montrées : voici le motif répété.
drawn-piece-closes = La pièce se referme : après { $row }, elle ne peut plus être dessinée à plat, ses tours sont donc déroulés.
drawn-piece-stands-up = La pièce se redresse : après { $row }, elle ne peut plus être dessinée à plat, ses tours sont donc déroulés.
drawn-last-round = le dernier tour
drawn-shown = Montré : { $what }.
drawn-whole-rows = rangs entiers
drawn-rows-shown = { $first } à { $last }
drawn-rows-of = { $rows } sur { $n }
drawn-left-out-between = { $n ->
    [one] le motif répété avec ses bords, { $n } motif omis entre les deux
   *[other] le motif répété avec ses bords, { $n } motifs omis entre les deux
}
drawn-left-out-at-line = { $n ->
    [one] le motif répété avec ses bords, { $n } motif omis à la ligne pointillée
   *[other] le motif répété avec ses bords, { $n } motifs omis à la ligne pointillée
}
drawn-left-out-middle = le motif répété avec ses bords, les motifs du milieu omis à la ligne pointillée
drawn-plain-left-out = { $n ->
    [one] { $many } mailles unies de chaque rang omises à la ligne pointillée
   *[other] { $many } mailles unies de chaque rang omises aux lignes pointillées
}
drawn-ends-shown = les deux bouts des rangs, { $n } signes omis à l’espace qui les sépare
drawn-edge-left-out = coins et bouts du bord, { $n } signes omis aux lignes pointillées
drawn-in-grey = En gris : le bord autour duquel on crochète.
drawn-unrolled = Crocheté en rond ; dessiné déroulé, chaque tour se lit dans le même sens.
drawn-own-stitch = { $n } : { $words }
drawn-row-unread = { $row } n’a pas pu être lu : « { $words } ».
drawn-rows-unread = { $n } autres rangs n’ont pas pu être lus.
drawn-unread-one = { $row } non lu
drawn-unread-range = { $first } à { $last } non lus
drawn-drawn-up-to = Le diagramme est dessiné jusque-là.
drawn-begins-after = Le diagramme commence après, sur des mailles qui devaient être là.
drawn-between-dashes = Entre les lignes tiretées, { $n } fois en tout : { $rows }
drawn-row-counts = { $row } : { $count }
drawn-yarn-rows = Fil { $yarn } : { $rows }
drawn-rs = end
drawn-ws = env
drawn-back-loop = brin arrière seulement
drawn-front-loop = brin avant seulement
drawn-third-loop = troisième brin
drawn-worked-on-ws = { $seen } (aux rangs envers : { $worked })
drawn-front-and-back = Les symboles montrent l’ouvrage vu sur l’endroit : aux rangs envers, avant et arrière s’échangent.
drawn-ring-sign = rond dans lequel se fait le premier tour
drawn-cut-sign = couper le fil et arrêter
drawn-join-sign = joindre le fil
drawn-yarn-named = fil { $name }

# Grids
drawn-grid-filet = Grille filet
drawn-grid-colour = Grille de couleurs
drawn-grid-corner = Grille de coin à coin
drawn-drawn-as-filet = Dessiné en grille filet.
drawn-drawn-as-colour = Dessiné en grille de couleurs.
drawn-drawn-as-corner = Dessiné en grille de coin à coin.
drawn-grid-chart = { $name } : { $kind }
drawn-square-filet = Un carré est une maille du filet, large de { $n } mailles.
drawn-square-corner = Un carré est un bloc de { $stitch }.
drawn-square-colour = Un carré est 1 { $stitch }.
drawn-space = { $n ->
    [one] { $n } vide
   *[other] { $n } vides
}
drawn-block = { $n ->
    [one] { $n } plein
   *[other] { $n } pleins
}
drawn-upper-right-to-lower-left = d’en haut à droite à en bas à gauche
drawn-upper-left-to-lower-right = d’en haut à gauche à en bas à droite
drawn-lower-left-to-upper-right = d’en bas à gauche à en haut à droite
drawn-lower-right-to-upper-left = d’en bas à droite à en haut à gauche
drawn-space-means-us = vide : { $n } ml, sauter { $n } m, 1 { $stitch } dans la m suivante
drawn-space-means-uk = { drawn-space-means-us }
drawn-block-means = plein : 1 { $stitch } dans chacune des { $n } m
drawn-yarn-unnamed = { $sign } : le fil sans nom
drawn-yarn-sign = { $sign } : { $name }
drawn-in-all = { $what } ({ $n } en tout)
drawn-grid-row = { $row }, lu { $way } : { $cells }.
drawn-grid-row-all = { $row }, lu { $way } : { $cells } (en tout { $count }).
drawn-filet-edge = La première maille d’un rang, ou les mailles en l’air qui comptent pour une, est la ligne du bord : elle n’a pas de carré.
drawn-unrolled-short = Crocheté en rond ; dessiné déroulé.
drawn-squares-shown-right = Montré : carrés { $first } à { $last } sur { $n }, comptés de droite ; { $rows }. Partie { $part } sur { $parts }.
drawn-squares-shown-left = Montré : carrés { $first } à { $last } sur { $n }, comptés de gauche ; { $rows }. Partie { $part } sur { $parts }.
drawn-repeat-shown-right = Montré : le motif répété avec ses bords, carrés 1 à { $last } sur { $n }, comptés de droite ; { $rows } sur { $of }.
drawn-repeat-shown-left = Montré : le motif répété avec ses bords, carrés 1 à { $last } sur { $n }, comptés de gauche ; { $rows } sur { $of }.
drawn-repeats-across = { $n ->
    [one] Tous les carrés d’un rang sont pareils.
   *[other] En largeur, le motif se répète tous les { $n } carrés.
}
drawn-repeats-up = { $n ->
    [one] Tous les rangs sont pareils.
   *[other] En hauteur, le motif se répète tous les { $n } rangs.
}
drawn-counts-of-shown = Les nombres à côté d’un rang sont ceux des carrés montrés.
drawn-parts-left-out = { $n } autres parties sont omises.

# How motifs are joined
drawn-motifs-joined = Comment les motifs sont assemblés
drawn-motifs-read-right = Comment les motifs sont assemblés. Rangées de { $n } motifs, lues de gauche à droite et de haut en bas, vues sur l’endroit.
drawn-motifs-read-left = Comment les motifs sont assemblés. Rangées de { $n } motifs, lues de droite à gauche et de haut en bas, vues sur l’endroit.
drawn-motifs-row = Rangée { $row } de motifs : { $first } à { $last }.
drawn-motifs-row-one = Rangée { $row } de motifs : { $first }.
drawn-motifs-ties = { $n ->
    [one] Un côté est assemblé en { $n } point.
   *[other] Un côté est assemblé en { $n } points.
}
drawn-motifs-order = Les motifs de la première rangée sont assemblés à celui d’à côté, le premier d’une rangée à celui du dessus, tous les autres aux deux.
drawn-motifs-around = { $row } entoure tous les motifs.
drawn-motifs-many = { $across } motifs en largeur et { $down } en hauteur, { $n } en tout, numérotés rangée par rangée.
drawn-motifs-shown = Montré : les { $across } premiers en largeur et { $down } en hauteur.
drawn-motifs-tied = 1 est : { $first } ; 2 à { $n } sont assemblés au { $row }, là où de courts traits croisent un bord.
drawn-motifs-any-order = Un autre ordre convient aussi, pourvu que chaque motif soit assemblé à tous ceux, finis, qui le touchent.
drawn-motifs-meet = Les motifs se rejoignent là où des traits croisent un bord.
drawn-motifs-border = { $n ->
    [one] Autour, en tirets : { $name }, { $n } tour.
   *[other] Autour, en tirets : { $name }, { $n } tours.
}
drawn-motif = Motif
drawn-border = bordure

# Schematics
drawn-schematic = Schéma
drawn-schematic-of = Schéma : { $title }
drawn-sheet = { $title }, feuille { $n }
drawn-size = Taille { $size }
drawn-sizes = Tailles { $sizes }
drawn-arrow = Flèche : sens du travail.
drawn-dashed = Tirets : une pliure, ou le début d’une partie.
drawn-dotted = Pointillés : assemblé.
drawn-half = ½ : à plat, la moitié du tour ou de la largeur.
drawn-drawn-in-size = Dessiné en taille { $size }.
drawn-mirrored = En miroir pour la main gauche.
drawn-to-scale = Contour dessiné à l’échelle.
drawn-to-scale-in-size = Contour dessiné à l’échelle en taille { $size }.
drawn-times-as-large = dessiné { $n } fois plus grand
drawn-the-piece = La pièce
drawn-piece = pièce
drawn-figure-told = { $name } : { $how }.
drawn-figure-measured = { $name } : { $how } ; mesuré en { $letters }.
drawn-figure-copied = { $how } ; { $copies }
drawn-measure-told = { $name } : { $values }.
drawn-measure-of = { $part }, { $measure }
drawn-whole = Ensemble
drawn-in-all-of = { $measure } en tout
drawn-front = Devant
drawn-cm = cm
drawn-in = po
drawn-together-of = { $title } : comment les pièces s’assemblent
drawn-together = Comment les pièces s’assemblent
drawn-joined-to = { $name }, assemblé à { $letter }
drawn-letter-name = { $letter } : { $name }
drawn-letter-copies = { $letter } : { $name } ({ $copies })
drawn-made-disc = crocheté en rond du centre vers l’extérieur
drawn-made-oval = crocheté en rond des deux côtés d’une chaînette
drawn-made-rows = crocheté en rangs aller et retour, de bas en haut
drawn-made-tie = une chaînette, crochetée en revenant
drawn-made-tip = crocheté en rangs depuis le milieu du bord supérieur, qui tournent à la pointe
drawn-made-half-circle = crocheté en rangs depuis le milieu du bord supérieur, chaque rang un demi-cercle
drawn-made-front = empiècement, corps et manches posés à plat, fermés devant ; le tout crocheté du col vers le bas
drawn-made-yoke = crocheté en rangs du col vers le bas, en augmentant le long des lignes où les pans se rejoignent ; dessiné ouvert à plat
drawn-made-rounds-bottom-up = crocheté en rond du centre du fond vers le haut ; dessiné à plat
drawn-made-rounds-top-down = crocheté en rond du centre du haut vers le bas ; dessiné à plat
drawn-made-rounds-lower-up = crocheté en rond du bord inférieur vers le haut ; dessiné à plat
drawn-made-rounds-upper-down = crocheté en rond du bord supérieur vers le bas ; dessiné à plat
drawn-made-filled = crocheté en rond du centre du haut vers le bas ; dessiné rempli, chaque tour un cercle
drawn-made-joined = motifs assemblés côte à côte, avec la bordure autour
