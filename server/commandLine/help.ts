/** What `zonewright --help` prints. */
export const help = `Usage: zonewright COMMAND …

  check PATH…     look for faults in instruments; a folder is searched for them
                    --format text|json|sarif   --fail-on error|warning|none   --no-cache
  regions FILE    list every region with the values in force
                    --format text|json   --middle-c C3|C4|C5   --samples DIR   --attenuation 1|0.4
  convert FILE…   write an instrument, a copied zone table or a SoundFont as SFZ, instrument XML or
                  a SoundFont; several go into one SoundFont, FILE#bank:preset says where
                    --to sfz|xml|VOCABULARY|sf2   --output FILE   --notes FILE   --inline   --force   --prove
                    --template FILE   --fact NAME=VALUE …
                    --middle-c C3|C4|C5   --samples DIR   --attenuation 1|0.4
                    from a SoundFont: --output FILE for one preset, --output DIR for all of them
                    to a SoundFont: --bits 16|24   --rates keep|lower
                                    --keyswitches presets|first   --takes first|presets
  map FILE        draw the keyboard map
                    --output FILE.svg   --force
  sample FILE…    print what the header of a sample file says, and what its audio tells:
                    its pitch alone, or all that is measured
                    --format text|json   --pitch   --measure   --whole   --no-cache
  report FILE     list the samples of an instrument with what is known of each, and its tuning
                    --format markdown|csv|html   --table samples|tuning   --output FILE   --force   --no-cache
  explain FILE    say which regions play a note, and why the others do not
                    --key K   --velocity V   --controller N=V …   --keyswitch K
                    --strike N   --seed N   --format text|json
                    --middle-c C3|C4|C5   --samples DIR
  render FILE     write what notes sound like as a WAV file, the same bytes each time
                    --key K | --keys A-B | --midi FILE.mid   --output FILE.wav
                    --velocity V   --hold S   --controller N=V …   --seed N
                    --rate HZ   --quality live|reference   --float   --force
                    --format text|json   --middle-c C3|C4|C5   --samples DIR
  compare A B     say whether two instruments sound alike, and where and why not (status 1)
                    --tolerance DB   --format text|json|markdown|html   --no-cache
                    A --recording FILE.wav   --notes FILE.mid
                    --middle-c C3|C4|C5   --samples DIR
  sweep FILE      write a MIDI file that lets every region sound, to record or to compare
                    --output FILE.mid   --hold S   --gap S   --seed N   --force
                    --middle-c C3|C4|C5   --samples DIR
  vocabulary      how an XML dialect of other names writes instruments
                    print FILE              the vocabulary that an instrument is read by
                    infer FILE              works it out from the text, says why
                                            --output FILE.vocabulary.json   --force
                    check VOCABULARY…       --with FILE
                    --format text|json
  library         many instruments at once, by a file zonewright.library.json
                    new FOLDER              writes it for the instruments of a folder, and names doubts
                    build [FILE]            builds what has changed: texts, notes, maps and records
                                            --part I/N   --threads N   --measure   --prove   --pack
                                            --force   --no-cache
                    report [FILE]           tells of each: --format text|json|csv|html|markdown   --output FILE
                                            --merge DIR…  of the parts that several machines built   --title TEXT
                    pack [LIBRARY|FILE]     packs what was built, or one instrument, to be shared
                                            --output FOLDER   --form zip|folder   --audio keep|flac
                                            --fact licence=… …   --without-licence   --threads N   --force
                    --format text|json

FILE is SFZ, instrument XML, a zone table saved as text, or a SoundFont: FILE.sf2#bank:preset is
one preset of it, FILE.sf2 for check and sample all of it, else its first preset; - reads standard input.
A folder of recordings, without a table, is made an instrument by names, pitch and loudness.
Without --bits samples keep their depth; --rates lower brings samples below 50,000 frames a second.
A SoundFont knows neither keyswitches nor takes (round robins, random choices): they become presets,
or the first is written alone. --samples names a folder of files that hold the same audio as samples
in a SoundFont, so that they need not be written again.
--attenuation 1|0.4 says how much of the attenuation in a SoundFont counts: all, as is published, or what
the first hardware made of it, as some players do; it holds for reading and writing.
XML in another vocabulary is read by a file *.vocabulary.json in its folder or one above
it, or by what its own text says.
Included files are read from the folder of the instrument, and from the folder that the command runs in
or is given, where the instrument lies in it; --include-folder DIR names another one.
--template puts groups and regions in the place of a text's examples and keeps all else of it;
--fact says what goes where it marks a place, as in (maker goes here).
--prove plays source and result; the exit status is 1 where they differ and no note says why.
--recording compares with a recording of the original, which played the sweep of A or what --notes names.
--inline writes out variables and included files, which are otherwise kept where possible.
--middle-c says which octave the table gives to key 60. --samples names the folder
in which a table's samples are looked up.
An output file is written whole or not at all, and never over what is read or a file of another kind without --force.
Exit status: 0 done, 1 check found something at or above --fail-on, 2 wrong usage or an unreadable input.
Severities of findings are set in a file zonewright.json in the instrument's folder or one above it.
`;
