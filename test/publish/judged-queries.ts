// What people ask a club's search, with the pages that would serve them; judged by hand from the records, before any tuning.

export interface Judged {
  readonly asked: string;
  /** Ends of addresses, without .html; the first find must be one of them. */
  readonly useful: readonly string[];
}

function judged(lines: string): readonly Judged[] {
  return lines
    .trim()
    .split("\n")
    .map((line) => line.split("|").map((part) => part.trim()))
    .map(([asked = "", useful = ""]) => ({ asked, useful: useful.split(/\s+/) }));
}

/** Names and numbers, symptoms in other words than the record's, typing errors, whole questions, figures in other spellings. */
export const english = judged(`
gannet                                            | cards/gannet-fixed-disk-controller
gannet disk                                       | cards/gannet-fixed-disk-controller
FS200                                             | cards/gannet-fixed-disk-controller
Gannnet fixed disc controler                      | cards/gannet-fixed-disk-controller
skerry 16t                                        | boards/skerry-16t
SK16T                                             | boards/skerry-16t
skery 24                                          | boards/skerry-24
plover tape                                       | cards/plover-tape-interface
tallow tracer                                     | cards/tallow-bus-tracer
bus tracer                                        | cards/tallow-bus-tracer
harbourlight                                      | firmware/harbourlight-monitor
R5.1                                              | firmware/skerry-monitor
monitor R6                                        | firmware/skerry-monitor
sound card                                        | cards/reed-warbler-sound cards/bittern-speech
network card                                      | cards/samphire-network-card cards/redshank-network-card
tape streamer                                     | cards/whimbrel-streaming-tape
eprom programmer                                  | cards/wrasse-programmer
EPROM burner card                                 | cards/wrasse-programmer
modem                                             | cards/foghorn-modem
serial card four ports                            | cards/godwit-four-serial
real time clock                                   | cards/sandglass-clock
accelerator                                       | cards/smew-accelerator
samfire                                           | cards/samphire-network-card
sandglas                                          | cards/sandglass-clock
oyster catcher                                    | cards/oystercatcher-multi-card
logic analyzer                                    | cards/creek-logic-analyser
color display                                     | cards/lantern-colour-display
floppy controller                                 | cards/shelduck-floppy-controller
RAM disk                                          | cards/sprat-silicon-disk
silicon disc                                      | cards/sprat-silicon-disk
black screen three beeps                          | conflicts/r4-scan-stops-short
no picture, only beeps                            | conflicts/r4-scan-stops-short
machine freezes at option scan                    | conflicts/plover-answers-twice conflicts/groyne-odd-size-byte
it hangs after the disk says ready twice          | conflicts/gannet-a-hangs-under-r6
gannet hangs R6                                   | conflicts/gannet-a-hangs-under-r6
keyboard stops working after a minute             | conflicts/smew-trips-over-r5
keybord dead                                      | conflicts/smew-trips-over-r5
wrong date 1920                                   | conflicts/sandglass-century-under-r6
clock shows wrong year                            | conflicts/sandglass-century-under-r6
clock forgot the date                             | conflicts/oystercatcher-b-clock-moved
power supply trips                                | conflicts/skerry-16-supply-trips
fan spins once then nothing                       | conflicts/skerry-16-supply-trips
supply too weak                                   | conflicts/skerry-16-supply-trips conflicts/minus-12-sags-on-16 conflicts/skua-start-on-16t-c
-12 volts too low                                 | conflicts/minus-12-sags-on-16
5 V sags                                          | conflicts/five-volts-low-at-s1
snow on screen                                    | conflicts/five-volts-low-at-s1 conflicts/beacon-next-to-skua
flickering picture                                | conflicts/five-volts-low-at-s1 conflicts/beacon-next-to-skua
reboots when plotter moves                        | conflicts/long-switch-lead-picks-up-motors
resets by itself when motor runs                  | conflicts/long-switch-lead-picks-up-motors
wrong ROM starts after switching                  | conflicts/bank-lines-float-on-16t conflicts/long-switch-lead-picks-up-motors conflicts/tied-pins-hide-banks
switch does nothing, always the same firmware     | conflicts/tied-pins-hide-banks
same version in every switch position             | conflicts/tied-pins-hide-banks
pull-ups                                          | conflicts/bank-lines-float-on-16t parts/resistor-10k
burned eprom reads blank                          | conflicts/skerry-24-pin-1-high
eprom empty although verified                     | conflicts/skerry-24-pin-1-high
dead after burning new ROMs                       | conflicts/wrasse-exchanges-halves
which half is even                                | conflicts/wrasse-exchanges-halves
run and mark swapped                              | conflicts/tallow-lead-drawn-from-solder-side
lead wired mirror image                           | conflicts/tallow-lead-drawn-from-solder-side conflicts/jetty-loop-drawn-from-outside
tracer loses its memory when hot                  | conflicts/tracer-cooks-its-neighbour
smoke                                             | conflicts/tracer-hurts-skerry-16
hum in the speakers                               | conflicts/reed-warbler-hum-through-network
sampler clicks                                    | conflicts/corncrake-high-buffer
hissing recordings                                | conflicts/corncrake-warm-neighbour
floppies unreadable R5                            | conflicts/r5-eats-floppies
tape not found in the cold                        | conflicts/plover-after-cold-night
cartridge drive not found at power on             | conflicts/kittiwake-1-before-r6
cartridge stuck                                   | conflicts/cartridge-locked-after-live-switch
crash turning the knob                            | conflicts/cartridge-locked-after-live-switch conflicts/skua-write-lost-on-live-switch
IRQ sharing gannet godwit                         | conflicts/gannet-godwit-shared-line
interupt line 2 or 9                              | conflicts/line-2-is-line-9
DMA conflict floppy                               | conflicts/shelduck-never-lets-go conflicts/ternlet-channel-2
modem answers twice                               | conflicts/oystercatcher-serial-mirrors
printer prints garbage with network               | conflicts/avocet-redshank-alias-worry
network slow when warm                            | conflicts/samphire-a-too-slow-for-12
card too thick                                    | conflicts/limpet-1-too-thick
card does not fit in S3                           | conflicts/tracer-skirt-meets-capacitor
3E0h                                              | conflicts/oystercatcher-serial-mirrors
port 0x3BC                                        | conflicts/avocet-3bc-and-buoy cards/avocet-printer-port
E000:0 frame with 4 MB                            | conflicts/skerry-24-ram-below-frame
DC00:0000 answers at D800:0000                    | conflicts/plover-answers-twice
0xC0000 RAM                                       | conflicts/skerry-16-b-ram-at-c0000 conflicts/skerry-16-b-ram-over-groyne
no picture with 640 KB                            | conflicts/skerry-16-b-ram-at-c0000
does the plover need R5.1?                        | cards/plover-tape-interface
which firmware does the gannet need               | cards/gannet-fixed-disk-controller
can I use the beacon in a skerry 24               | cards/beacon-high-resolution
how sure is this                                  | sure
27C512                                            | parts/27c512
27 c 512                                          | parts/27c512
spredsheet wrong results                          | conflicts/pintail-in-a-long-slot conflicts/turbot-caches-the-frame
data corruption above 1 MB                        | conflicts/skua-a-cannot-reach
old EPROM forgets                                 | conflicts/wrasse-pulses-short-at-12
`);

export const german = judged(`
Netzwerkkarte                                     | cards/samphire-network-card cards/redshank-network-card
Soundkarte                                        | cards/reed-warbler-sound cards/bittern-speech
Festplatte Controller                             | cards/gannet-fixed-disk-controller cards/crake-disk-controller cards/razorbill-disk-controller cards/skua-fast-disk-controller
Bandlaufwerk                                      | cards/plover-tape-interface cards/whimbrel-streaming-tape cards/kittiwake-cartridge-drive
Uhr falsches Datum                                | conflicts/sandglass-century-under-r6
kein Bild                                         | conflicts/skerry-16-b-ram-at-c0000 conflicts/r4-scan-stops-short
schwarzer Bildschirm                              | conflicts/r4-scan-stops-short
Tastatur tot                                      | conflicts/smew-trips-over-r5
Netzteil schaltet ab                              | conflicts/skerry-16-supply-trips
Rauch                                             | conflicts/tracer-hurts-skerry-16
Drucker druckt Unsinn                             | conflicts/avocet-redshank-alias-worry
Diskette nicht lesbar                             | conflicts/r5-eats-floppies
Lautsprecher brummt                               | conflicts/reed-warbler-hum-through-network
Schalter falsche Firmware                         | conflicts/bank-lines-float-on-16t conflicts/long-switch-lead-picks-up-motors conflicts/tied-pins-hide-banks
Absturz beim Umschalten                           | conflicts/skua-write-lost-on-live-switch conflicts/cartridge-locked-after-live-switch
Speicherkarte                                     | cards/marram-memory-board cards/barnacle-battery-memory cards/cockle-extended-memory cards/dune-backfill-memory cards/limpet-page-memory cards/tideline-wide-memory
EPROM leer                                        | conflicts/skerry-24-pin-1-high
Karte zu dick                                     | conflicts/limpet-1-too-thick
Unterbrechung Leitung 9                           | conflicts/crake-vx-is-9 conflicts/line-2-is-line-9
Netzwerk langsam                                  | conflicts/samphire-a-too-slow-for-12 conflicts/two-network-cards-one-cable
`);

export const french = judged(`
carte réseau                                      | cards/samphire-network-card cards/redshank-network-card
carte son                                         | cards/reed-warbler-sound cards/bittern-speech
contrôleur disque dur                             | cards/gannet-fixed-disk-controller cards/crake-disk-controller cards/razorbill-disk-controller cards/skua-fast-disk-controller
lecteur de bande                                  | cards/plover-tape-interface cards/whimbrel-streaming-tape cards/kittiwake-cartridge-drive
horloge mauvaise date                             | conflicts/sandglass-century-under-r6
écran noir                                        | conflicts/r4-scan-stops-short
pas d'image                                       | conflicts/skerry-16-b-ram-at-c0000 conflicts/r4-scan-stops-short
clavier mort                                      | conflicts/smew-trips-over-r5
alimentation trop faible                          | conflicts/skerry-16-supply-trips conflicts/minus-12-sags-on-16 conflicts/skua-start-on-16t-c
fumée                                             | conflicts/tracer-hurts-skerry-16
imprimante imprime n'importe quoi                 | conflicts/avocet-redshank-alias-worry
disquette illisible                               | conflicts/r5-eats-floppies
haut-parleur ronfle                               | conflicts/reed-warbler-hum-through-network
EPROM vide                                        | conflicts/skerry-24-pin-1-high
carte trop épaisse                                | conflicts/limpet-1-too-thick
réseau lent                                       | conflicts/samphire-a-too-slow-for-12 conflicts/two-network-cards-one-cable
carte mémoire                                     | cards/marram-memory-board cards/barnacle-battery-memory cards/cockle-extended-memory cards/dune-backfill-memory cards/limpet-page-memory cards/tideline-wide-memory
programmateur d'EPROM                             | cards/wrasse-programmer
imprimante                                        | cards/avocet-printer-port
plantage au changement                            | conflicts/skua-write-lost-on-live-switch conflicts/cartridge-locked-after-live-switch
`);

/** Asked only once the search had been tuned on the others: what it does with questions it has not seen. */
export const afterwards = judged(`
lanturn display                                   | cards/lantern-colour-display
godwit                                            | cards/godwit-four-serial
KC20                                              | cards/kittiwake-cartridge-drive
instrument bus                                    | cards/teal-instrument-bus
frame grabber                                     | cards/spindrift-frame-grabber
speech synthesizer card                           | cards/bittern-speech
loop network drops out                            | conflicts/gate-array-skips-a-grant
teleprinter does not receive                      | conflicts/jetty-loop-drawn-from-outside
teletype loses characters with modem on           | conflicts/minus-12-sags-on-16
third drive is not seen                           | conflicts/shelduck-needs-its-driver
drive c not ready                                 | conflicts/shelduck-needs-its-driver conflicts/samphire-360-longer-than-said
spreadsheet shows stale numbers                   | conflicts/turbot-caches-the-frame
disk works with short cable but not with long one | conflicts/skua-packs-and-terminator
backup rewinds in the middle                      | conflicts/wrasse-reads-upset-whimbrel
voltmeter reads late                              | conflicts/teal-godwit-shared-line
32 pin eprom too long for socket                  | conflicts/skerry-16-b-28-pins
last file is empty after turning the knob         | conflicts/skua-write-lost-on-live-switch
plug does not screw in next to godwit             | conflicts/godwit-shell-hides-neighbour
gannet in slot S5 times out                       | conflicts/skerry-16-b-line-11-missing
analog input hum                                  | conflicts/gurnard-lead-carries-current
cache card stale data                             | conflicts/turbot-caches-the-page conflicts/turbot-caches-the-frame
27C010 eprom                                      | parts/27c010
rotary switch                                     | parts/rotary-1x12 parts/rotary-2x6-shorting parts/rotary-2x6 parts/rotary-3x4 parts/rotary-4x3 parts/rotary-4x6 parts/rotary-6x4 parts/rotary-8x3
Monitor bleibt dunkel und piept                   | conflicts/r4-scan-stops-short
pas de son                                        | conflicts/corncrake-high-buffer conflicts/reed-warbler-hum-through-network cards/reed-warbler-sound
Kassettenlaufwerk nicht gefunden                  | conflicts/kittiwake-1-before-r6
`);
