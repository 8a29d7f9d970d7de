# SPDX-License-Identifier: GPL-3.0-or-later
# Completion of strandwise-cli in bash.

# What may follow an option of a command: words, or files of an ending. An option that is not here takes a number.
_strandwise_cli_value ()
{
  case $1 in
    --acid) echo acetic citric ;;
    --face) echo first second ;;
    --item) echo sock hat mitten scarf shawl ;;
    --side) echo knit purl ;;
    --fibre) echo superwash-wool wool superwash-nylon nylon silk ;;
    --format) case $2 in sheet) echo txt json pdf svg ;; template) echo pdf svg ;; *) echo png jpeg svg pdf ;; esac ;;
    --paper) echo a4 letter ;;
    --pan) echo none steel enamel ;;
    --label) echo none white grey ;;
    --arrangement) echo hank hanks hank-cloth skein-cloth whole ;;
    --shape) echo square 4:5 wide ;;
    --ground) echo white pale grey charcoal ;;
    --state) echo dry wet ;;
    --units) case $2 in sheet | template | words) echo metric us ;; *) echo cm in ;; esac ;;
  esac
}

_strandwise_cli_options ()
{
  case $1 in
    '') echo --help --version ;;
    check) echo --json --help ;;
    forecast) echo --width --json --help ;;
    scan) echo --from --to --csv --json --help ;;
    sheet) echo --output --format --skeins --pans --units --paper --help ;;
    draw) echo --output --format --size --face --units --item --side --stitch-px --width --from --to --pan --wet --turns --start --arrangement --hanks --label --label-words --maker --no-drawn-line --shape --ground --no-marks --dark --help ;;
    words) echo --alt --units --help ;;
    template) echo --output --format --skeins --pans --paper --units --help ;;
    trace) echo --into --output --help ;;
    calc) echo --help ;;
    'calc stitch-length') echo --wales-per-cm --courses-per-cm --state --json --help ;;
    'calc ph') echo --acid --molar --alkalinity --carbonate --json --help ;;
    'calc strike') echo --half-time --ph --temp --fibre --activation --json --help ;;
    'calc difference') echo --lab --json --help ;;
    'calc colour') echo --reflectance --json --help ;;
    'calc spectrum') echo --srgb --json --help ;;
    'calc mix') echo --yarn --sample --depth --json --help ;;
  esac
}

# The words that are not options: commands, sums and pictures.
_strandwise_cli_words ()
{
  case $1 in
    '') echo check forecast scan sheet draw words template trace calc ;;
    calc) echo stitch-length ph strike difference colour spectrum mix ;;
    draw) echo pan strip cloth item scan skein hank listing ;;
  esac
}

_strandwise_cli_files ()
{
  compopt -o filenames 2>/dev/null
  mapfile -t COMPREPLY < <(compgen -d -- "$2"; compgen -f -X "!*.$1" -- "$2")
}

_strandwise_cli ()
{
  local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]} command= last=1

  COMPREPLY=()
  if (( COMP_CWORD > 1 )); then
    command=${COMP_WORDS[1]}
  fi
  if [[ $command == calc ]] && (( COMP_CWORD > 2 )); then
    command="calc ${COMP_WORDS[2]}"
  fi
  if [[ $command == draw || $command == calc ]]; then
    last=2
  fi

  case $before in
    -o | --output) compopt -o default 2>/dev/null; return ;;
    --reflectance | --yarn | --sample) _strandwise_cli_files csv "$word"; return ;;
    --into) _strandwise_cli_files colourway "$word"; return ;;
    --acid | --arrangement | --face | --fibre | --format | --ground | --item | --pan | --paper | --shape | --side | --state | --units)
      mapfile -t COMPREPLY < <(compgen -W "$(_strandwise_cli_value "$before" "$command")" -- "$word"); return ;;
    --from | --to | --width | --skeins | --pans | --size | --stitch-px | --turns | --start | --hanks | --wales-per-cm | --courses-per-cm | --molar | --alkalinity | --carbonate | --half-time | --ph | --temp | --activation | --lab | --srgb | --depth)
      return ;;
  esac

  if [[ $word == -* ]]; then
    mapfile -t COMPREPLY < <(compgen -W "$(_strandwise_cli_options "$command")" -- "$word")
  elif (( COMP_CWORD <= last )); then
    mapfile -t COMPREPLY < <(compgen -W "$(_strandwise_cli_words "$command")" -- "$word")
  elif [[ $command == trace ]]; then
    _strandwise_cli_files svg "$word"
  elif [[ $command != calc* ]]; then
    _strandwise_cli_files colourway "$word"
  fi
}

complete -F _strandwise_cli strandwise-cli
