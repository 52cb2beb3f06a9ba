# Words of pages in French: all from memory, to be checked by a native speaker. Terms of stitches stand elsewhere.
decimal = ,
list-separator = ,{" "}
size-separator = ;{" "}

# Headings of parts, in the order of the trade
part-sizes = Tailles et mesures finies
part-materials = Matériel
part-gauge = Échantillon
part-abbreviations = Abréviations
part-special = Points particuliers
part-notes = Remarques
part-schematic = Schéma des mesures
part-instructions = Instructions
part-charts = Diagrammes
part-finishing = Finitions
part-care = Entretien
part-cautions = Sécurité
part-help = Aide
part-changes = Modifications
part-version = À propos de ce modèle
part-terms-of-use = Conditions d'utilisation

# Sizes
size = Taille
sizes = Tailles
to-fit = pour { $measure }
finished = Fini, à plat
worn = Porté
whole = Ouvrage entier
measure-of = { $section }, { $measure }
yarn = Fil
yarn-of = Fil { $colour }
metres = m
balls = pelotes
ball-note = Une pelote fait { $grams } g ou { $metres } m. Les mètres sont calculés d'après les mailles{ "\u00A0" }; le besoin se situe entre les deux nombres, les pelotes sont pour le plus grand.
ball-note-plain = Les mètres sont calculés d'après les mailles{ "\u00A0" }; le besoin se situe entre les deux nombres.
hours = Temps
hours-unit = heures
in-cm = cm (pouces entre parenthèses)
open-chain-note = La longueur de la chaînette est libre ; les nombres de mailles, les diagrammes et les mesures sont ici ceux d'un échantillon sur { $n } mailles en l'air.
worked-in = Le modèle a été réalisé en taille { $size }.
all-sizes-note = Les nombres sont donnés pour les tailles dans cet ordre{ "\u00A0" }: { $sizes }. Un seul nombre vaut pour toutes.

# Materials and gauge
hook = Crochet
notions = Fournitures
materials-yarn = Fil
gauge-other = Un autre échantillon
gauge-stitch = 1 { $stitch } mesure { $width } mm de large, un rang { $height } mm de haut.
gauge-other-corner = { $stitches } m sur 10 cm
gauge-other-note = Ce que donne la première mesure quand les mailles sont plus petites ou plus grandes. Si l'échantillon ne correspond pas, changer d'abord de crochet{ "\u00A0" }; une ligne intermédiaire dit quelle taille faire.
gauge-guess = Aucun échantillon n'est indiqué{ "\u00A0" }: voici ce que donnent d'ordinaire ce fil et ce crochet.

# Notes
repeats-note = Ce qui suit * se répète autant de fois qu'indiqué{ "\u00A0" }; ( ) contient ce qui va au même endroit, [ ] ce qui se répète autant de fois.
left-handed-note = Pour gauchers{ "\u00A0" }: le texte est le même, les rangs vont dans l'autre sens et les tours dans le sens des aiguilles d'une montre. Les diagrammes sont inversés, leurs nombres non.
spelled-out-note = Les répétitions sont écrites en entier.

# Instructions
measure-now = Mesurer maintenant{ "\u00A0" }: { $what }.
tick = Fait
notes-of-mine = Mes notes
your-column = Colorier sa colonne{ "\u00A0" }; ne lire que ses nombres.
every-size = toutes les tailles
not-in-this-size = pas dans cette taille
choose-size = Taille
all-sizes = Toutes les tailles
film = Film
film-at = Le film est à l'adresse { $address }.

# Pictures
photograph-alt = { $title }, terminé
cover-alt = { $title }, tel que le font ses mailles
chart-caption = { $section }
chart-of = Diagramme{ "\u00A0" }: { $section }
schematic-alt = Schéma des mesures{ "\u00A0" }: { $title }
in-words = En mots
description-of = En mots

# Ends
corrections-at = Les corrections sont à l'adresse { $address }.
version-line = Version { $version }
version-dated = Version { $version }, { $date }
draft = Brouillon
page-of = page { $page } sur { $pages }
made-by = Création{ "\u00A0" }: { $author }
meets = Cette édition est composée en corps { $points }, sur une colonne, sans italique{ "\u00A0" }; chaque compte est dans le texte, et rien ne dépend d'une couleur ou d'une image.
unchecked-terms = Ces termes restent à vérifier par une personne qui crochète dans cette langue{ "\u00A0" }: { $terms }.
own-words-note = Les textes de la créatrice sont en { $language }.
no-pictures = Cette édition est sans images.

# Names of measures
measure-across = diamètre
measure-around = tour
measure-depth = profondeur
measure-width = largeur
measure-height = hauteur
measure-length = longueur
measure-width-at-the-start = largeur au début
measure-width-at-the-end = largeur à la fin
measure-around-at-the-start = tour au début
measure-around-at-the-end = tour à la fin
measure-opening-around = tour de l'ouverture
measure-around-worn = tour, porté
measure-depth-worn = profondeur, porté
measure-length-worn = longueur, porté

# Measures of the body
body-head-circumference = tête
body-chest = poitrine
body-foot-length = longueur du pied
body-foot-circumference = tour du pied
body-hand-circumference = tour de la main

# The web page and the EPUB
web-skip = Aller aux instructions
web-contents = Dans ce modèle
web-of = { $n } sur { $all }
web-of-all = sur { $all }
web-done = { $row } fait
web-done-of = { $row }, { $n } sur { $all } fait
web-back = Un rang en arrière
web-finished = Tous les rangs sont faits.
web-kept = Les coches sont gardées dans ce navigateur, pour chaque taille.
web-not-kept = Les coches ne peuvent pas être gardées dans ce navigateur{ "\u00A0" }: elles durent tant que la page est ouverte.
web-untick = Enlever toutes les coches
web-undo = Remettre les coches
web-larger = Aussi grand que dessiné
epub-summary = Tout le texte peut être agrandi et lu à voix haute. Chaque image est décrite en mots, chaque diagramme est aussi donné rang par rang, les tableaux ont des en-têtes, et rien ne dépend de la couleur.
