#!/bin/sh
# Flash and RAM of the controller on two kinds of board; needs Debian's gcc-arm-none-eabi, gcc-avr, avr-libc.
# usage: sizes.sh   (from any folder)
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
core="bb_basics bb_probes bb_heater bb_power bb_fan bb_service bb_controller"

# compiler, name, options
measure() {
  compiler=$1
  name=$2
  shift 2
  if ! command -v "$compiler-gcc" >/dev/null 2>&1; then
    echo "$name: $compiler-gcc is not installed, skipped"
    return
  fi
  for file in $core bb_settings bb_link; do
    "$compiler-gcc" -std=c99 -Wall -Wextra -Werror -ffreestanding -fno-common -Os "$@" -c "$here/$file.c" -o "$work/$file.o"
  done
  # the state of one controller, and of one link with its controller, as the linker sees them
  printf '#include "broodbench.h"\nbb_controller state;\n' >"$work/state.c"
  printf '#include "bb_link.h"\nbb_link state;\n' >"$work/link.c"
  printf '#include "broodbench.h"\nint32_t s[BB_SETTINGS_COUNT];\nbb_readings r;\nbb_commands c;\n' >"$work/rest.c"
  for file in state link rest; do
    "$compiler-gcc" -std=c99 -ffreestanding -fno-common -Os -I"$here" "$@" -c "$work/$file.c" -o "$work/$file.o"
  done
  sum() { # column of size: 1 text, 2 data, 3 bss
    column=$1
    shift
    "$compiler-size" "$@" | awk -v c="$column" 'NR > 1 { s += $c } END { print s + 0 }'
  }
  objects() { for f in "$@"; do printf '%s/%s.o ' "$work" "$f"; done; }
  # shellcheck disable=SC2046 # names without spaces
  {
    flash=$(($(sum 1 $(objects $core)) + $(sum 2 $(objects $core))))
    data=$(sum 2 $(objects $core))
    state=$(sum 3 $(objects state))
    rest=$(sum 3 $(objects rest))
    link_flash=$(($(sum 1 $(objects bb_settings bb_link)) + $(sum 2 $(objects bb_settings bb_link))))
    link_state=$(($(sum 3 $(objects link)) - state))
  }
  echo "$name: core $flash bytes of flash; RAM $((state + data)) of state, $rest of settings, readings and commands"
  echo "$name: link and settings check $link_flash bytes more of flash, $link_state of RAM"
}

measure arm-none-eabi "Cortex-M0+" -mcpu=cortex-m0plus -mthumb
measure arm-none-eabi "Cortex-M4" -mcpu=cortex-m4 -mthumb
measure avr "ATmega1284P" -mmcu=atmega1284p
measure avr "ATmega328P" -mmcu=atmega328p

# the whole sketch with stubbed drivers, linked
if command -v avr-gcc >/dev/null 2>&1; then
  for file in $core bb_settings bb_link board/board_sketch board/board_stub; do
    avr-gcc -mmcu=atmega1284p -std=c99 -Os -ffunction-sections -c "$here/$file.c" -o "$work/$(basename "$file").sketch.o"
  done
  avr-gcc -mmcu=atmega1284p -Wl,--gc-sections -o "$work/sketch" "$work"/*.sketch.o
  avr-size "$work/sketch" | awk 'NR == 2 { print "ATmega1284P: board sketch linked, " $1 + $2 " bytes of flash, " $2 + $3 " of RAM" }'
fi
