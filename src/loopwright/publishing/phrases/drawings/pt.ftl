# What drawings say in Portuguese: all from memory, to be checked by a native maker. Terms of stitches stand elsewhere.

# Charts
drawn-chart = Gráfico
drawn-symbol-chart = { $name }: gráfico
drawn-shape-disc = Voltas em torno de um centro
drawn-shape-oval = Voltas pelos dois lados de uma correntinha
drawn-shape-rows = Carreiras
drawn-shape-edge = Trabalhado em volta da borda da peça
drawn-shape-unrolled = Voltas, desenroladas
drawn-shape-3 = Voltas de um triângulo
drawn-shape-4 = Voltas de um quadrado
drawn-shape-5 = Voltas de um pentágono
drawn-shape-6 = Voltas de um hexágono
drawn-shape-8 = Voltas de um octógono
drawn-shape-n = Voltas de uma forma de { $n } cantos
drawn-begins = { $name }. { $shape }, pelo lado direito.
drawn-begins-on = Começa em { $n } corr.
drawn-begins-on-ring = Começa em { $n } corr, fechadas em anel.
drawn-next-round = Próxima volta
drawn-next-row = Próxima carreira
drawn-row = Carreira
drawn-a-row = uma carreira
drawn-the-chain = a correntinha
drawn-right-side = lado direito
drawn-wrong-side = lado avesso
drawn-clockwise = no sentido horário
drawn-counter-clockwise = no sentido anti-horário
drawn-left-to-right = da esquerda para a direita
drawn-right-to-left = da direita para a esquerda
drawn-with-yarn = fio { $yarns }
drawn-row-told = { $head }: { $worked }.
drawn-row-told-count = { $head }: { $worked } ({ $count }).
drawn-underside = { $made } (do outro lado da correntinha)
drawn-with-picot = { $made } com 1 { $picot }
drawn-made-alike = fazer { $n }, iguais
drawn-made-mirrored = fazer { $n }, espelhados
drawn-make = fazer { $n }
drawn-too-many = O todo tem { $n } pontos, demais para mostrar: esta é a repetição.
drawn-piece-closes = A peça se fecha: depois de { $row } não pode ser desenhada plana, por isso suas voltas estão desenroladas.
drawn-piece-stands-up = A peça se levanta: depois de { $row } não pode ser desenhada plana, por isso suas voltas estão desenroladas.
drawn-last-round = a última volta
drawn-shown = Mostrado: { $what }.
drawn-whole-rows = carreiras inteiras
drawn-rows-shown = { $first } a { $last }
drawn-rows-of = { $rows } de { $n }
drawn-left-out-between = { $n ->
    [one] a repetição com suas bordas, { $n } repetição omitida no meio
   *[other] a repetição com suas bordas, { $n } repetições omitidas no meio
}
drawn-left-out-at-line = { $n ->
    [one] a repetição com suas bordas, { $n } repetição omitida na linha pontilhada
   *[other] a repetição com suas bordas, { $n } repetições omitidas na linha pontilhada
}
drawn-left-out-middle = a repetição com suas bordas, as repetições do meio omitidas na linha pontilhada
drawn-plain-left-out = { $n ->
    [one] { $many } pontos lisos de cada carreira omitidos na linha pontilhada
   *[other] { $many } pontos lisos de cada carreira omitidos nas linhas pontilhadas
}
drawn-ends-shown = as duas pontas das carreiras, { $n } símbolos omitidos no espaço entre elas
drawn-edge-left-out = cantos e pontas da borda, { $n } símbolos omitidos nas linhas pontilhadas
drawn-in-grey = Em cinza: a borda em volta da qual se trabalha.
drawn-unrolled = Trabalhado em voltas; desenhado desenrolado, todas as voltas são lidas no mesmo sentido.
drawn-own-stitch = { $n }: { $words }
drawn-row-unread = { $row } não pôde ser lida: “{ $words }”.
drawn-rows-unread = { $n } outras carreiras não puderam ser lidas.
drawn-unread-one = { $row } não lida
drawn-unread-range = { $first } a { $last } não lidas
drawn-drawn-up-to = O gráfico está desenhado até ali.
drawn-begins-after = O gráfico começa depois, em pontos que deviam estar ali.
drawn-between-dashes = Entre as linhas tracejadas, { $n } vezes ao todo: { $rows }
drawn-row-counts = { $row }: { $count }
drawn-yarn-rows = Fio { $yarn }: { $rows }
drawn-rs = LD
drawn-ws = LA
drawn-back-loop = só na alça de trás
drawn-front-loop = só na alça da frente
drawn-third-loop = terceira alça
drawn-worked-on-ws = { $seen } (nas carreiras do avesso: { $worked })
drawn-front-and-back = Os símbolos mostram o trabalho visto pelo lado direito: nas carreiras do avesso, frente e trás trocam de lugar.
drawn-ring-sign = anel onde se trabalha a primeira volta
drawn-cut-sign = cortar o fio e arrematar
drawn-join-sign = prender o fio
drawn-yarn-named = fio { $name }

# Grids
drawn-grid-filet = Quadriculado de filé
drawn-grid-colour = Quadriculado de cores
drawn-grid-corner = Quadriculado de canto a canto
drawn-drawn-as-filet = Desenhado como quadriculado de filé.
drawn-drawn-as-colour = Desenhado como quadriculado de cores.
drawn-drawn-as-corner = Desenhado como quadriculado de canto a canto.
drawn-grid-chart = { $name }: { $kind }
drawn-square-filet = Um quadrado é uma malha da rede, de { $n } pontos de largura.
drawn-square-corner = Um quadrado é um bloco de { $stitch }.
drawn-square-colour = Um quadrado é 1 { $stitch }.
drawn-space = { $n ->
    [one] { $n } vazio
   *[other] { $n } vazios
}
drawn-block = { $n ->
    [one] { $n } cheio
   *[other] { $n } cheios
}
drawn-upper-right-to-lower-left = do canto superior direito ao inferior esquerdo
drawn-upper-left-to-lower-right = do canto superior esquerdo ao inferior direito
drawn-lower-left-to-upper-right = do canto inferior esquerdo ao superior direito
drawn-lower-right-to-upper-left = do canto inferior direito ao superior esquerdo
drawn-space-means-us = vazio: { $n } corr, pular { $n } p, 1 { $stitch } no próximo p
drawn-space-means-uk = { drawn-space-means-us }
drawn-block-means = cheio: 1 { $stitch } em cada um de { $n } p
drawn-yarn-unnamed = { $sign }: o fio sem nome
drawn-yarn-sign = { $sign }: { $name }
drawn-in-all = { $what } ({ $n } ao todo)
drawn-grid-row = { $row }, lida { $way }: { $cells }.
drawn-grid-row-all = { $row }, lida { $way }: { $cells } (ao todo { $count }).
drawn-filet-edge = O primeiro ponto de uma carreira, ou as correntinhas que contam como um, é a linha da borda: não tem quadrado.
drawn-unrolled-short = Trabalhado em voltas; desenhado desenrolado.
drawn-squares-shown-right = Mostrado: quadrados { $first } a { $last } de { $n }, contados da direita; { $rows }. Parte { $part } de { $parts }.
drawn-squares-shown-left = Mostrado: quadrados { $first } a { $last } de { $n }, contados da esquerda; { $rows }. Parte { $part } de { $parts }.
drawn-repeat-shown-right = Mostrado: a repetição com suas bordas, quadrados 1 a { $last } de { $n }, contados da direita; { $rows } de { $of }.
drawn-repeat-shown-left = Mostrado: a repetição com suas bordas, quadrados 1 a { $last } de { $n }, contados da esquerda; { $rows } de { $of }.
drawn-repeats-across = { $n ->
    [one] Todos os quadrados de uma carreira são iguais.
   *[other] Na largura, o desenho se repete a cada { $n } quadrados.
}
drawn-repeats-up = { $n ->
    [one] Todas as carreiras são iguais.
   *[other] Na altura, o desenho se repete a cada { $n } carreiras.
}
drawn-counts-of-shown = Os números ao lado de uma carreira são os dos quadrados mostrados.
drawn-parts-left-out = { $n } outras partes foram omitidas.

# How motifs are joined
drawn-motifs-joined = Como os motivos são unidos
drawn-motifs-read-right = Como os motivos são unidos. Fileiras de { $n } motivos, lidas da esquerda para a direita e de cima para baixo, pelo lado direito.
drawn-motifs-read-left = Como os motivos são unidos. Fileiras de { $n } motivos, lidas da direita para a esquerda e de cima para baixo, pelo lado direito.
drawn-motifs-row = Fileira { $row } de motivos: { $first } a { $last }.
drawn-motifs-row-one = Fileira { $row } de motivos: { $first }.
drawn-motifs-ties = { $n ->
    [one] Um lado é unido em { $n } lugar.
   *[other] Um lado é unido em { $n } lugares.
}
drawn-motifs-order = Os motivos da primeira fileira são unidos ao do lado, o primeiro de uma fileira ao de cima, todos os outros a ambos.
drawn-motifs-around = { $row } contorna todos os motivos.
drawn-motifs-many = { $across } motivos na largura e { $down } na altura, { $n } ao todo, numerados fileira por fileira.
drawn-motifs-shown = Mostrado: os primeiros { $across } na largura e { $down } na altura.
drawn-motifs-tied = 1 é: { $first }; 2 a { $n } são unidos na { $row }, onde linhas curtas cruzam uma borda.
drawn-motifs-any-order = Outra ordem também serve, desde que cada motivo seja unido a todos os prontos ao lado.
drawn-motifs-meet = Os motivos se encontram onde linhas cruzam uma borda.
drawn-motifs-border = { $n ->
    [one] Em volta, tracejado: { $name }, { $n } volta.
   *[other] Em volta, tracejado: { $name }, { $n } voltas.
}
drawn-motif = Motivo
drawn-border = borda

# Schematics
drawn-schematic = Esquema
drawn-schematic-of = Esquema: { $title }
drawn-sheet = { $title }, folha { $n }
drawn-size = Tamanho { $size }
drawn-sizes = Tamanhos { $sizes }
drawn-arrow = Seta: direção do trabalho.
drawn-dashed = Tracejado: uma dobra, ou onde começa uma parte.
drawn-dotted = Pontilhado: unido.
drawn-half = ½: plano, metade da circunferência ou da largura.
drawn-drawn-in-size = Desenhado no tamanho { $size }.
drawn-mirrored = Espelhado para a mão esquerda.
drawn-to-scale = Contorno desenhado em escala.
drawn-to-scale-in-size = Contorno desenhado em escala no tamanho { $size }.
drawn-times-as-large = desenhado { $n } vezes maior
drawn-the-piece = A peça
drawn-piece = peça
drawn-figure-told = { $name }: { $how }.
drawn-figure-measured = { $name }: { $how }; medido em { $letters }.
drawn-figure-copied = { $how }; { $copies }
drawn-measure-told = { $name }: { $values }.
drawn-measure-of = { $part }, { $measure }
drawn-whole = Peça inteira
drawn-in-all-of = { $measure } ao todo
drawn-front = Frente
drawn-cm = cm
drawn-in = pol.
drawn-together-of = { $title }: como as peças se juntam
drawn-together = Como as peças se juntam
drawn-joined-to = { $name }, unido a { $letter }
drawn-letter-name = { $letter }: { $name }
drawn-letter-copies = { $letter }: { $name } ({ $copies })
drawn-made-disc = trabalhado em voltas do centro para fora
drawn-made-oval = trabalhado em voltas pelos dois lados de uma correntinha
drawn-made-rows = trabalhado em carreiras de ida e volta, de baixo para cima
drawn-made-tie = uma correntinha, com pontos trabalhados de volta sobre ela
drawn-made-tip = trabalhado em carreiras do meio da borda de cima, que viram na ponta
drawn-made-half-circle = trabalhado em carreiras do meio da borda de cima, cada carreira um semicírculo
drawn-made-front = pala, corpo e mangas como ficam planos, fechados na frente; tudo trabalhado da gola para baixo
drawn-made-yoke = trabalhado em carreiras da gola para baixo, crescendo nas linhas onde os painéis se encontram; desenhado aberto
drawn-made-rounds-bottom-up = trabalhado em voltas do centro do fundo para cima; desenhado plano
drawn-made-rounds-top-down = trabalhado em voltas do centro do topo para baixo; desenhado plano
drawn-made-rounds-lower-up = trabalhado em voltas da borda de baixo para cima; desenhado plano
drawn-made-rounds-upper-down = trabalhado em voltas da borda de cima para baixo; desenhado plano
drawn-made-filled = trabalhado em voltas do centro do topo para baixo; desenhado cheio, cada volta um círculo
drawn-made-joined = motivos unidos lado a lado, com a borda em volta
