# SPDX-License-Identifier: GPL-3.0-or-later
# Completion of strandwise-cli in fish.

set -l commands check forecast scan draw template trace calc
set -l sums stitch-length ph strike difference colour spectrum mix
set -l pictures pan strip cloth scan skein hank listing
set -l c complete -c strandwise-cli

$c -f
$c -n "not __fish_seen_subcommand_from $commands" -l version -d 'Print the version'
$c -s h -l help -d 'Show help'
$c -n "not __fish_seen_subcommand_from $commands" -a check -d 'Say whether colourways can be read and forecast'
$c -n "not __fish_seen_subcommand_from $commands" -a forecast -d 'Print everything that is forecast'
$c -n "not __fish_seen_subcommand_from $commands" -a scan -d 'Print how the colours pool at every width'
$c -n "not __fish_seen_subcommand_from $commands" -a draw -d 'Draw a picture of a colourway'
$c -n "not __fish_seen_subcommand_from $commands" -a template -d 'Draw the pan full size'
$c -n "not __fish_seen_subcommand_from $commands" -a trace -d 'Bring a traced layout in as pours'
$c -n "not __fish_seen_subcommand_from $commands" -a calc -d 'Work out a dyer\'s single sums'

$c -n '__fish_seen_subcommand_from check forecast' -ka '(__fish_complete_suffix .colourway)'
$c -n '__fish_seen_subcommand_from check forecast calc' -l json -d 'Print JSON instead of words'

# The first word after the program is the command: “scan” is also a picture.
set -l scanning 'test (count (commandline -opc)) -gt 1; and test (commandline -opc)[2] = scan'
$c -n $scanning -ka '(__fish_complete_suffix .colourway)'
$c -n $scanning -l json -d 'Print JSON instead of words'
$c -n $scanning -l csv -d 'Print lines of values'
$c -n $scanning -x -l from -d 'Narrowest width in stitches'
$c -n $scanning -x -l to -d 'Widest width in stitches'

set -l drawing '__fish_seen_subcommand_from draw'
$c -n "$drawing; and not __fish_seen_subcommand_from $pictures" -a "$pictures"
$c -n "$drawing; and __fish_seen_subcommand_from $pictures" -ka '(__fish_complete_suffix .colourway)'
$c -n $drawing -r -F -s o -l output -d 'Where the picture goes'
$c -n $drawing -x -l format -a 'png jpeg svg pdf' -d 'Kind of picture'
$c -n $drawing -x -l size -d 'Width and height, WxH'
$c -n $drawing -x -l face -a 'first second' -d 'The face that is up'
$c -n $drawing -x -l units -a 'cm in' -d 'Units of lengths'
$c -n $drawing -x -l side -a 'knit purl' -d 'The side of the cloth that is seen'
$c -n $drawing -x -l pan -a 'none steel enamel' -d 'What the skein lies in'
$c -n $drawing -l wet -d 'The skein is wet'
$c -n $drawing -x -l turns -d 'Turns of the twist'
$c -n $drawing -x -l start -d 'Place of the end of the hank, cm'
$c -n $drawing -x -l arrangement -a 'hank hanks hank-cloth skein-cloth whole' -d 'What is in the listing'
$c -n $drawing -x -l hanks -d 'Hanks side by side'
$c -n $drawing -x -l shape -a 'square 4:5 wide' -d 'Shape of the listing'
$c -n $drawing -x -l ground -a 'white pale grey charcoal' -d 'What the yarn lies on'
$c -n $drawing -x -l stitch-px -d 'Width of a stitch in px'
$c -n $drawing -l no-marks -d 'Without the outlines of the pours'
$c -n $drawing -l dark -d 'On a dark ground'

set -l tracing '__fish_seen_subcommand_from trace'
$c -n '__fish_seen_subcommand_from template' -ka '(__fish_complete_suffix .colourway)'
$c -n '__fish_seen_subcommand_from template trace' -r -F -s o -l output -d 'Where it goes'
$c -n '__fish_seen_subcommand_from template' -x -l format -a 'pdf svg' -d 'Pages or a drawing'
$c -n '__fish_seen_subcommand_from template' -x -l paper -a 'a4 letter' -d 'Paper to print on'
$c -n '__fish_seen_subcommand_from template' -x -l units -a 'metric us' -d 'Units of the amounts'
$c -n $tracing -ka '(__fish_complete_suffix .svg)'
$c -n $tracing -r -F -l into -d 'The colourway that was drawn on'

set -l calculating '__fish_seen_subcommand_from calc; and not __fish_seen_subcommand_from'
$c -n "$calculating $sums" -a stitch-length -d 'Yarn in one stitch, from the gauge'
$c -n "$calculating $sums" -a ph -d 'pH of acid in water of some alkalinity'
$c -n "$calculating $sums" -a strike -d 'How fast a dye strikes'
$c -n "$calculating $sums" -a difference -d 'Difference of two colours, CIEDE2000'
$c -n "$calculating $sums" -a colour -d 'Colour of a measured reflectance'
$c -n "$calculating $sums" -a spectrum -d 'The smoothest reflectance of a colour'
$c -n "$calculating $sums" -a mix -d 'Colour of a mixture of dyes on a yarn'

$c -n '__fish_seen_subcommand_from stitch-length' -x -l wales-per-cm -d 'Stitches to a centimetre'
$c -n '__fish_seen_subcommand_from stitch-length' -x -l courses-per-cm -d 'Rows to a centimetre'
$c -n '__fish_seen_subcommand_from stitch-length' -x -l state -a 'dry wet' -d 'How the cloth was relaxed'
$c -n '__fish_seen_subcommand_from ph' -x -l acid -a 'acetic citric' -d 'Which acid'
$c -n '__fish_seen_subcommand_from ph' -x -l molar -d 'Acid, mol in a litre'
$c -n '__fish_seen_subcommand_from ph' -x -l alkalinity -d 'Alkalinity, eq in a litre'
$c -n '__fish_seen_subcommand_from ph' -x -l carbonate -d 'Carbonate that stays, mol in a litre'
$c -n '__fish_seen_subcommand_from strike' -x -l half-time -d 'Minutes at pH 4, 90 °C'
$c -n '__fish_seen_subcommand_from strike' -x -l ph -d 'pH of the bath'
$c -n '__fish_seen_subcommand_from strike' -x -l temp -d 'Temperature of the bath, °C'
$c -n '__fish_seen_subcommand_from strike' -x -l fibre -a 'superwash-wool wool superwash-nylon nylon silk' -d 'Fibre'
$c -n '__fish_seen_subcommand_from strike' -x -l activation -d 'Activation energy, kJ/mol'
$c -n '__fish_seen_subcommand_from difference' -x -l lab -d 'A colour in CIELAB, twice'
$c -n '__fish_seen_subcommand_from colour' -r -F -l reflectance -d 'Wavelengths and reflectances'
$c -n '__fish_seen_subcommand_from spectrum' -x -l srgb -d 'A colour, each 0 to 255'
$c -n '__fish_seen_subcommand_from mix' -r -F -l yarn -d 'Reflectance of the undyed yarn'
$c -n '__fish_seen_subcommand_from mix' -r -F -l sample -d 'Reflectance of a sample, and its depth'
$c -n '__fish_seen_subcommand_from mix' -x -l depth -d 'Depth in the mixture'
