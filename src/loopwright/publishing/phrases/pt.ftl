# Words of pages in Portuguese (Brazil): all from memory, to be checked by a native speaker. Terms of stitches stand elsewhere.
decimal = ,
list-separator = ,{" "}
size-separator = ;{" "}

# Headings of parts, in the order of the trade
part-sizes = Tamanhos e medidas finais
part-materials = Materiais
part-gauge = Amostra
part-abbreviations = Abreviações
part-special = Pontos especiais
part-notes = Observações
part-schematic = Esquema de medidas
part-instructions = Instruções
part-charts = Gráficos
part-finishing = Acabamento
part-care = Cuidados
part-cautions = Segurança
part-help = Ajuda
part-changes = Alterações
part-version = Sobre esta receita
part-terms-of-use = Termos de uso

# Sizes
size = Tamanho
sizes = Tamanhos
to-fit = para { $measure }
finished = Pronto, plano
worn = Vestido
whole = Peça inteira
measure-of = { $section }, { $measure }
yarn = Fio
yarn-of = Fio { $colour }
metres = m
balls = novelos
ball-note = Um novelo tem { $grams } g ou { $metres } m. Os metros são calculados a partir dos pontos; o necessário fica entre os dois números, os novelos são para o maior.
ball-note-plain = Os metros são calculados a partir dos pontos; o necessário fica entre os dois números.
hours = Tempo
hours-unit = horas
in-cm = cm (polegadas entre parênteses)
open-chain-note = O comprimento da correntinha é livre; as contagens, os gráficos e as medidas são aqui os de uma amostra sobre { $n } correntinhas.
worked-in = A peça foi feita no tamanho { $size }.
all-sizes-note = Os números valem para os tamanhos nesta ordem: { $sizes }. Um número só vale para todos.

# Materials and gauge
hook = Agulha
notions = Aviamentos
materials-yarn = Fio
gauge-other = Outra amostra
gauge-stitch = 1 { $stitch } tem { $width } mm de largura, uma carreira { $height } mm de altura.
gauge-other-corner = { $stitches } p em 10 cm
gauge-other-note = O que dá a primeira medida quando os pontos são menores ou maiores. Se a amostra não confere, trocar primeiro a agulha; uma linha intermediária diz que tamanho fazer.
gauge-guess = Nenhuma amostra é indicada: é o que este fio e esta agulha costumam dar.

# Notes
repeats-note = O que vem depois de * se repete quantas vezes for dito; ( ) contém o que vai num só lugar, [ ] o que se repete tantas vezes.
left-handed-note = Para canhotos: o texto é o mesmo, as carreiras vão ao contrário e as voltas no sentido horário. Os gráficos são espelhados, seus números não.
spelled-out-note = As repetições estão escritas por extenso.

# Instructions
measure-now = Medir agora: { $what }.
tick = Feito
notes-of-mine = Minhas notas
your-column = Colorir a própria coluna; ler só os seus números.
every-size = todos os tamanhos
not-in-this-size = não neste tamanho
choose-size = Tamanho
all-sizes = Todos os tamanhos
film = Vídeo
film-at = O vídeo está em { $address }.

# Pictures
photograph-alt = { $title }, pronto
cover-alt = { $title }, como os pontos o formam
chart-caption = { $section }
chart-of = Gráfico: { $section }
schematic-alt = Esquema de medidas: { $title }
in-words = Em palavras
description-of = Em palavras

# Ends
corrections-at = As correções estão em { $address }.
version-line = Versão { $version }
version-dated = Versão { $version }, { $date }
draft = Rascunho
page-of = página { $page } de { $pages }
made-by = Criação: { $author }
meets = Esta edição está composta em corpo { $points }, uma coluna, sem itálico; cada contagem está no texto, e nada depende de cor ou imagem.
unchecked-terms = Estes termos ainda devem ser revistos por quem faz crochê neste idioma: { $terms }.
own-words-note = Os textos próprios da criadora estão em { $language }.
no-pictures = Esta edição não traz imagens.

# Names of measures
measure-across = diâmetro
measure-around = circunferência
measure-depth = profundidade
measure-width = largura
measure-height = altura
measure-length = comprimento
measure-width-at-the-start = largura no início
measure-width-at-the-end = largura no fim
measure-around-at-the-start = circunferência no início
measure-around-at-the-end = circunferência no fim
measure-opening-around = circunferência da abertura
measure-around-worn = circunferência, vestido
measure-depth-worn = profundidade, vestido
measure-length-worn = comprimento, vestido

# Measures of the body
body-head-circumference = cabeça
body-chest = busto
body-foot-length = comprimento do pé
body-foot-circumference = circunferência do pé
body-hand-circumference = circunferência da mão

# The web page and the EPUB
web-skip = Ir para as instruções
web-contents = Nesta receita
web-of = { $n } de { $all }
web-of-all = de { $all }
web-done = { $row } feito
web-done-of = { $row }, { $n } de { $all } feito
web-back = Uma carreira atrás
web-finished = Todas as carreiras estão feitas.
web-kept = As marcas ficam guardadas neste navegador, por tamanho.
web-not-kept = As marcas não podem ser guardadas neste navegador: duram enquanto a página estiver aberta.
web-untick = Tirar todas as marcas
web-undo = Repor as marcas
web-larger = Tão grande quanto desenhado
epub-summary = Todo o texto pode ser ampliado e lido em voz alta. Cada imagem é descrita em palavras, cada gráfico também é dado carreira por carreira, as tabelas têm cabeçalhos, e nada depende de cor.
