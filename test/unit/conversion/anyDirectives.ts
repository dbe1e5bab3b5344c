import fc from 'fast-check';
import { anyInstrumentXml, anySfz, includedFiles } from '../features/anyInstrument';

/** Files that the instruments of {@link sfzWithDirectives} and {@link xmlWithDirectives} include. */
export const files: Record<string, string> = {
  ...includedFiles,
  '/music/names.sfz': '#define $FOLDER deep/er\n#define $KEYS 64\n// of two parts\n',
  '/music/layers.sfz': '<group> hivel=$KEY\n<region> sample=$FOLDER/soft.wav\n<group> lovel=64\n',
  '/music/tail.sfz': 'pan=7 <region> sample=tail.wav',
  '/music/outer.sfz': '<region> key=40\n#include "layers.sfz"\n<region> key=41\n',
  '/music/layers.xml':
    '<instrument><group lovel="5"><region key="$KEY"/></group><master tune="2"/><region key="1"/></instrument>',
};

const sfzDirective = fc.constantFrom(
  '\n#include "names.sfz"\n',
  '\n#include "layers.sfz"\n',
  '\n#include "outer.sfz"\n',
  '\n#include "tail.sfz"\n',
  '\n#include "no such.sfz"\n',
  '\n#define $FOLDER up\n',
  '\n#define $KEY 50\n',
  '\n#define $KEYS $KEY\n',
  '\n#define $PART "x"&<y>\n',
  '\n<region> sample=$FOLDER/a.wav key=$KEY\n',
  '\n<region> key=$KEYS region_label=$PART\n',
  '\n<group> lo$PART=3 tune=-$KEY\n',
  '\n// ---- part -- two ----\n',
);

/** SFZ texts with many variables and includes. */
export const sfzWithDirectives: fc.Arbitrary<string> = fc
  .array(fc.oneof({ weight: 3, arbitrary: sfzDirective }, { weight: 2, arbitrary: anySfz }), { maxLength: 8 })
  .map((parts) => parts.join(''));

/** SFZ texts of one line each for a header or a directive, where each can stand in any notation. */
export const plainSfz: fc.Arbitrary<string> = fc
  .array(
    fc.constantFrom(
      '#include "names.sfz"',
      '#include "layers.sfz"',
      '#define $FOLDER up',
      '#define $KEY 50',
      '#define $KEYS $KEY',
      '#define $PART "x"&<y>',
      '<region> sample=$FOLDER/a.wav key=$KEY // beside',
      '<region> key=$KEYS region_label=$PART',
      '<region> sample=a b & c.wav loopmode=one_shot loop_mode=no_loop unheard_of=<1>',
      '<region>',
      '<group> tune=-$KEY',
      '<group>',
      '<master> pan=3',
      '<global> volume=-6',
      '<control> default_path=S/ note_offset=1',
      '<control> octave_offset=-1',
      '<curve> curve_index=7 v000=0',
      '<unheard> of=2',
      '// of its own',
      '//',
      '/* over\n   two lines */',
    ),
    { maxLength: 14 },
  )
  .map((lines) => lines.map((line) => `${line}\n`).join(''));

const xmlDirective = fc.constantFrom(
  '<include path="names.sfz"/>',
  '<include path="layers.sfz"/>',
  '<include path="outer.sfz"/>',
  '<include path="tail.sfz"/>',
  '<include path="layers.xml"/>',
  '<include path="no such.sfz"/>',
  '<define name="FOLDER" value="up"/>',
  '<define name="KEY" value="50"/>',
  '<define name="KEYS" value="$KEY"/>',
  '<define name="PART" value="x &amp; y"/>',
  '<define name="PRICE" value="&#36;KEY"/>',
  '<region sample="$FOLDER/a&amp;b.wav" key="$KEY"/>',
  '<region region_label="&#36;KEY $KEY"/>',
  '<group tune="-$KEY"><region key="$KEYS"/><include path="layers.sfz"/></group>',
  '<group lovel="3"/>',
);

/** Instrument XML with many variables and includes. */
export const xmlWithDirectives: fc.Arbitrary<string> = fc
  .tuple(
    fc.array(
      fc.oneof(
        { weight: 4, arbitrary: xmlDirective },
        {
          weight: 2,
          arbitrary: anyInstrumentXml.map((text) => text.replace(/^.*?<instrument>|<\/instrument>$/gs, '')),
        },
      ),
      { maxLength: 8 },
    ),
    fc.constantFrom('', ' tune="3"', ' region_label="&#36;KEY"'),
  )
  .map(([parts, attributes]) => `<instrument${attributes}>${parts.join('\n')}</instrument>`);

/** Instrument XML whose every part can stand in SFZ. */
export const plainXml: fc.Arbitrary<string> = fc
  .array(
    fc.constantFrom(
      '<include path="names.sfz"/>',
      '<include path="layers.sfz"/>',
      '<define name="FOLDER" value="up"/>',
      '<define name="KEY" value="50"/>',
      '<define name="KEYS" value="$KEY"/>',
      '<region sample="$FOLDER/a&amp;b.wav" key="$KEY"/> <!-- beside -->',
      '<region key="$KEYS" region_label="two words"/>',
      '<group tune="-$KEY"><!-- in it --><region key="$KEYS"/><region/></group>',
      '<master pan="3"><group tune="1"><region key="1"/></group><region key="2"/></master>',
      '<global volume="-6"><master pan="4"><region/></master><group tune="5"><region/></group></global>',
      '<group lovel="3"/>',
      '<master lovel="4"/>',
      '<control default_path="S/" note_offset="1"/>',
      '<curve curve_index="7" v000="0"/>',
      '<unheard of="2"/>',
      '<!-- of its own -->',
      '<!-- -->',
    ),
    { maxLength: 14 },
  )
  .map((parts) => `<instrument>\n${parts.join('\n')}\n</instrument>\n`);
