/** A text, with the files beside it by path. */
export interface Sized {
  text: string;
  files?: Record<string, string>;
}

const many = (count: number, one: (at: number) => string) =>
  Array.from({ length: count }, (_, at) => one(at)).join('');
let salt = 0;
/** A beginning for names that no other text has, as names are looked up once in a process. */
const fresh = () => `odd${(salt++).toString(36)}_`;

const region = (at: number) => `<region> sample=s${at}.wav key=${at % 128} lovel=${at % 3}\n`;

/** Instruments in SFZ with so many of each construct. */
export const sfzConstructs: Record<string, (size: number, name?: string) => Sized> = {
  regions: (size) => ({ text: many(size, region) }),
  'regions on one line': (size) => ({ text: many(size, (at) => region(at).replace('\n', ' ')) }),
  'regions of one sample on one key': (size) => ({
    text: many(size, () => '<region> sample=a.wav key=60\n'),
  }),
  'regions that overlap': (size) => ({
    text: many(size, (at) => `<region> sample=s${at}.wav lokey=${at % 60} hikey=${60 + (at % 60)}\n`),
  }),
  'regions of unlike conditions': (size) => ({
    text: many(
      size,
      (at) =>
        `<region> sample=s${at}.wav key=${at % 128} locc${at % 100}=${at % 128} sw_last=${at % 60} seq_length=${at % 90} seq_position=2\n`,
    ),
  }),
  'loops and ends': (size) => ({
    text: many(
      size,
      (at) => `<region> sample=a.wav key=${at % 128} loop_start=${at} loop_end=9${at} end=5 offset=${at}\n`,
    ),
  }),
  'numbered variables': (size) => ({
    text:
      many(size, (at) => `#define $V${at} ${at % 128}\n`) +
      many(size, (at) => `<region> sample=a.wav key=$V${at}\n`),
  }),
  'variables of variables': (size) => ({
    text: `#define $V0 1\n${many(size, (at) => `#define $V${at + 1} $V${at}\n`)}<region> key=$V${size}\n`,
  }),
  'one variable set again': (size) => ({
    text: many(size, (at) => `#define $KEY ${at % 128}\n<region> sample=a.wav key=$KEY\n`),
  }),
  'variables not defined': (size) => ({ text: many(size, (at) => `<region> sample=a.wav key=$NONE${at}\n`) }),
  'includes of one file': (size) => ({
    text: many(size, () => '#include "a.sfz"\n'),
    files: { '/music/a.sfz': region(1) },
  }),
  'includes of many files': (size) => ({
    text: many(size, (at) => `#include "p${at}.sfz"\n`),
    files: Object.fromEntries(
      Array.from({ length: size }, (_, at) => [`/music/p${at}.sfz`, `#define $P${at} 1\n${region(at)}`]),
    ),
  }),
  'includes of missing files': (size) => ({ text: many(size, (at) => `#include "p${at}.sfz"\n`) }),
  groups: (size) => ({
    text: many(size, (at) => `<group> group_label=G${at} lokey=${at % 128}\n${region(at)}`),
  }),
  'groups of one label': (size) => ({ text: many(size, (at) => `<group> group_label=Soft\n${region(at)}`) }),
  'masters and globals': (size) => ({
    text: many(
      size,
      (at) => `<global> volume=-${at % 9}\n<master> pan=${at % 9}\n<group> tune=1\n${region(at)}`,
    ),
  }),
  'empty groups': (size) => ({ text: many(size, () => '<group>\n') }),
  'opcodes nobody knows in one header': (size, name = fresh()) => ({
    text: `<region> ${many(size, (at) => `${name}${at}=1 `)}`,
  }),
  'controllers in one header': (size) => ({
    text: `<region> sample=a.wav ${many(size, (at) => `locc${at % 128}=1 pan_oncc${at}=3 `)}`,
  }),
  'one opcode set again': (size) => ({
    text: `<region> sample=a.wav ${many(size, (at) => `pan=${at % 100} `)}`,
  }),
  'modulators in one header': (size) => ({
    text: `<region> sample=a.wav ${many(size, (at) => `lfo${at}_freq=1 eg${at}_time1=2 `)}`,
  }),
  curves: (size) => ({ text: many(size, (at) => `<curve> curve_index=${at} v000=0 v127=1\n`) }),
  'points of one curve': (size) => ({ text: `<curve> curve_index=1 ${many(size, (at) => `v${at}=1 `)}` }),
  'control headers': (size) => ({
    text: many(size, (at) => `<control> default_path=p${at}/ note_offset=${at % 4}\n${region(at)}`),
  }),
  'labels of controllers': (size) => ({
    text: `<control> ${many(size, (at) => `label_cc${at % 512}=L${at} set_cc${at % 512}=1 `)}`,
  }),
  'headers nobody knows': (size) => ({ text: many(size, (at) => `<odd${at}> a=1\n`) }),
  'headers not closed': (size) => ({ text: many(size, () => '<region key=60\n') }),
  'opening angles': (size) => ({ text: '<'.repeat(size) }),
  'stray words': (size) => ({ text: many(size, (at) => `word${at} `) }),
  'stray lines': (size) => ({ text: many(size, (at) => `word${at}\n`) }),
  'signs of equality': (size) => ({ text: `<region> a${'='.repeat(size)}` }),
  'lines of comments': (size) => ({ text: many(size, (at) => `// remark ${at}\n`) + region(1) }),
  'comments behind regions': (size) => ({ text: many(size, (at) => `${region(at).trim()} // ${at}\n`) }),
  'comments in one line': (size) => ({ text: many(size, () => '/* a */ ') + region(1) }),
  'a comment that does not end': (size) => ({ text: many(size, () => '/* a ') }),
  'a long comment': (size) => ({ text: `/*${'\n * a'.repeat(size)}*/ ${region(1)}` }),
  'a long value': (size) => ({ text: `<region> region_label=${'a b '.repeat(size)}` }),
  'a long sample': (size) => ({ text: `<region> sample=${'../a/'.repeat(size)}a.wav` }),
  'a long name': (size) => ({ text: `<region> ${'a1_'.repeat(size)}=1` }),
  'a long variable': (size) => ({ text: `#define $A 1\n<region> key=$${'A'.repeat(size)}` }),
  'empty lines': (size) => ({ text: `${'\n'.repeat(size)}${region(1)}` }),
  blanks: (size) => ({
    text: `<region> a=1${' '.repeat(size)}b=2 <${' '.repeat(size)}group> c=1${'\t'.repeat(size)}`,
  }),
  'keyswitches and labels': (size) => ({
    text: many(
      size,
      (at) => `<group> sw_last=${at % 128} sw_label=S${at} sw_lokey=0 sw_hikey=127\n${region(at)}`,
    ),
  }),
  crossfades: (size) => ({
    text: many(size, (at) => `<region> sample=s${at}.wav key=60 xfin_lovel=${at % 127} xfin_hivel=127\n`),
  }),
  'off by groups': (size) => ({
    text: many(
      size,
      (at) => `<region> sample=s${at}.wav key=${at % 128} group=${at} off_by=${at + 1} trigger=release\n`,
    ),
  }),
};

const element = (at: number) => `<region sample="s${at}.wav" key="${at % 128}"/>\n`;
const document = (inside: string) => `<instrument>${inside}</instrument>`;

/** Instruments in XML with so many of each construct. */
export const xmlConstructs: Record<string, (size: number, name?: string) => Sized> = {
  elements: (size) => ({ text: document(many(size, element)) }),
  'elements on one line': (size) => ({ text: document(many(size, element).replaceAll('\n', '')) }),
  'elements in one group': (size) => ({ text: document(`<group lovel="3">${many(size, element)}</group>`) }),
  groups: (size) => ({
    text: document(many(size, (at) => `<group group_label="G${at}">${element(at)}</group>\n`)),
  }),
  'empty groups': (size) => ({
    text: document(many(size, (at) => `<group tune="${at % 9}"/>${element(at)}`)),
  }),
  'nested elements': (size) => ({
    text: document('<group lovel="1">'.repeat(size) + element(1) + '</group>'.repeat(size)),
  }),
  'nested elements of no meaning': (size) => ({
    text: document('<odd a="1">'.repeat(size) + '</odd>'.repeat(size)),
  }),
  'elements not closed': (size) => ({ text: document('<group>'.repeat(size)) }),
  'ends of nothing': (size) => ({ text: document('</group>'.repeat(size)) }),
  attributes: (size, name = fresh()) => ({
    text: document(`<region ${many(size, (at) => `${name}${at}="1" `)}/>`),
  }),
  'one attribute again': (size) => ({ text: document(`<region ${many(size, () => 'pan="1" ')}/>`) }),
  definitions: (size) => ({
    text: document(
      many(size, (at) => `<define name="V${at}" value="${at % 128}"/>\n`) +
        many(size, (at) => `<region sample="a.wav" key="$V${at}"/>\n`),
    ),
  }),
  'definitions of definitions': (size) => ({
    text: document(many(size, (at) => `<define name="V${at + 1}" value="$V${at}"/>\n`) + element(1)),
  }),
  'includes of one file': (size) => ({
    text: document(many(size, () => '<include path="a.xml"/>\n')),
    files: { '/music/a.xml': document(element(1)) },
  }),
  'includes of many files': (size) => ({
    text: document(many(size, (at) => `<include path="p${at}.xml"/>\n`)),
    files: Object.fromEntries(
      Array.from({ length: size }, (_, at) => [`/music/p${at}.xml`, document(element(at))]),
    ),
  }),
  comments: (size) => ({ text: document(many(size, (at) => `<!-- remark ${at} -->\n${element(at)}`)) }),
  'a comment that does not end': (size) => ({ text: document('<!-- a '.repeat(size)) }),
  references: (size) => ({ text: document(`<region region_label="${'&amp;&#65;'.repeat(size)}"/>`) }),
  'broken references': (size) => ({ text: document(`<region region_label="${'&a &'.repeat(size)}"/>`) }),
  'quotes not closed': (size) => ({ text: document(many(size, () => '<region key="60/>\n')) }),
  'opening angles': (size) => ({ text: document('<'.repeat(size)) }),
  'text between elements': (size) => ({ text: document(many(size, (at) => `word ${at} ${element(at)}`)) }),
  'instructions and sections': (size) => ({ text: document(many(size, () => '<?a b?><![CDATA[ x ]]>')) }),
};

const cells = (at: number) => [`s${at}.wav`, `${at % 128}`, `${at % 128}`, `${(at * 7) % 128}`, `${at % 64}`];
const heading = ['Sample', 'Low', 'High', 'Root', 'Pan'];

/** Copied zone tables with so many of each construct. */
export const tableConstructs: Record<string, (size: number, name?: string) => Sized> = {
  ...Object.fromEntries(
    Object.entries({ tabs: '\t', commas: ',', semicolons: ';', bars: ' | ', blanks: '   ' }).map(
      ([name, between]) => [
        `rows parted by ${name}`,
        (size: number) => ({
          text: [heading, ...Array.from({ length: size }, (_, at) => cells(at))]
            .map((row) => `${row.join(between)}\n`)
            .join(''),
        }),
      ],
    ),
  ),
  'rows in quotes': (size) => ({
    text: `${heading.join(',')}\n${many(
      size,
      (at) =>
        `${cells(at)
          .map((cell) => `"${cell}"`)
          .join(',')}\n`,
    )}`,
  }),
  'quotes not closed': (size) => ({
    text: `${heading.join(',')}\n${many(size, (at) => `"${cells(at).join(',')}\n`)}`,
  }),
  columns: (size) => ({
    text: `${many(size, (at) => `H${at}\t`)}\n${many(size, (at) => `${at}\t`)}\n${many(size, (at) => `s${at}.wav\t`)}\n`,
  }),
  'dumps of a database': (size) => ({
    text: `${many(size, (at) => `INSERT INTO audio (id, path) VALUES (${at}, 's${at}.wav');\n`)}${many(size, (at) => `INSERT INTO zone (audio_id, low_key, high_key) VALUES (${at}, ${at % 128}, ${at % 128});\n`)}`,
  }),
  conversations: (size) => ({ text: many(size, (at) => `[19:0${at % 10}] ann: s${at}.wav C4-D4 root C4\n`) }),
  paragraphs: (size) => ({
    text: many(
      size / 4,
      (at) => `Put a${at}.wav on 40 to 45, root 42, and b${at}.wav on 46 to 51, root 48.\n\n`,
    ),
  }),
  sections: (size) => ({
    text: many(size, (at) => `Group ${at}\n${heading.join('\t')}\n${cells(at).join('\t')}\n\n`),
  }),
  'a long cell': (size) => ({ text: `${heading.join('\t')}\n${'a b '.repeat(size)}\t1\t2\t3\t4\n` }),
  names: (size) => ({ text: many(size, (at) => `Harp_C${at % 8}_v${at % 4}_rr${at % 3}.wav\n`) }),
  'names of one stem': (size) => ({
    text: `Sample\tLow\tHigh\n${many(size, (at) => `Harp soft ${at}.wav\t${at % 128}\t${at % 128}\n`)}`,
  }),
  json: (size) => ({
    text: `[${Array.from({ length: size }, (_, at) => `{"sample":"s${at}.wav","low":${at % 128},"high":${at % 128}}`).join(',\n')}]`,
  }),
  'indented lists': (size) => ({
    text: many(size, (at) => `- s${at}.wav\n    low: ${at % 128}\n    high: ${at % 128}\n`),
  }),
  'names and values': (size) => ({
    text: many(size, (at) => `Sample: s${at}.wav\nLow: ${at % 128}\nHigh: ${at % 128}\n\n`),
  }),
  wiki: (size) => ({
    text: `{|\n! Sample !! Low !! High\n${many(size, (at) => `|-\n| s${at}.wav || ${at % 128} || ${at % 128}\n`)}|}\n`,
  }),
  'sentences about files': (size) => ({
    text: many(size, (at) => `s${at}.wav is on key ${at % 128}, 5 cents flat and 2 dB louder.\n`),
  }),
  'files with their keys before them': (size) => ({ text: many(size, (at) => `${at % 128}: s${at}.wav\n`) }),
  // A line is read as a sentence up to some hundred characters, so many lines grow longer here.
  'joined clauses in each line': (size) => ({
    text: many(64, (at) => `s${at}.wav key 60${' and key 60'.repeat(size / 8)}\n`),
  }),
  'statements above': (size) => ({
    text: `${many(size, (at) => `Group ${at} is ${at % 9} dB quieter.\n`)}\n${heading.join('\t')}\n${many(size, (at) => `${cells(at).join('\t')}\n`)}`,
  }),
  'remarks behind values': (size) => ({
    text: `${heading.join('\t')}\n${many(size, (at) => `${cells(at).join('\t')} <- check later\n`)}`,
  }),
  prose: (size) => ({ text: many(size, (at) => `This is sentence ${at} about nothing. `) }),
  'lines of prose': (size) => ({ text: many(size, (at) => `This is line ${at} about nothing.\n`) }),
  'empty lines': (size) => ({ text: `${heading.join('\t')}\n${'\n'.repeat(size)}${cells(1).join('\t')}\n` }),
};

/** Instruments in a vocabulary that nobody has named, with so many of each construct. */
export const unknownConstructs: Record<string, (size: number, name?: string) => Sized> = {
  zones: (size) => ({
    text: `<rack>${many(size, (at) => `<zone file="s${at}.wav" low="${at % 128}" high="${at % 128}" centre="${at % 128}"/>\n`)}</rack>`,
  }),
  'zones with elements': (size) => ({
    text: `<rack>${many(size, (at) => `<zone><file>s${at}.wav</file><keys from="${at % 128}" to="${at % 128}"/></zone>\n`)}</rack>`,
  }),
  'zones in rows': (size) => ({
    text: `<rack>${many(size, (at) => `<row name="R${at}"><zone file="s${at}.wav" low="${at % 128}" high="${at % 128}"/></row>\n`)}</rack>`,
  }),
  'places of many names': (size, name = fresh()) => ({
    text: `<rack>${many(size, (at) => `<zone file="s${at}.wav" low="1" high="2" ${name}${at % 100}="3"/>\n`)}</rack>`,
  }),
  'elements of many names': (size) => ({
    text: `<rack>${many(size, (at) => `<z${at} file="s${at}.wav" low="1" high="2"/>\n`)}</rack>`,
  }),
  nested: (size) => ({
    text: `<rack>${'<shelf>'.repeat(size)}<zone file="a.wav" low="1" high="2"/>${'</shelf>'.repeat(size)}</rack>`,
  }),
};

/** Templates in SFZ with so many of each construct. */
export const templateConstructs: Record<string, (size: number) => Sized> = {
  'groups of examples': (size) => ({
    text: many(size, (at) => `<group> volume=${at % 9}\n${region(at)}${region(at + 1)}`),
  }),
  'examples on one line': (size) => ({ text: many(size, (at) => region(at).replace('\n', ' ')) }),
  'remarks at examples': (size) => ({
    text: many(size, (at) => `// example ${at}\n<group>\n${region(at).replace('\n', ' // as it is\n')}`),
  }),
  'groups that stay': (size) => ({
    text: `${many(size, (at) => `// stays here\n<group>\n${region(at)}`)}<group>\n${region(0)}`,
  }),
  'opcodes of an example': (size) => ({
    text: `<region> sample=a.wav${many(size, (at) => ` opcode${at}=1`)}\n`,
  }),
};
