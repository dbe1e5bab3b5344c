import { listText } from '../../model/wording/listText';
import { levelScalePhrases } from '../../trade/scales/levelScale';
import type { ValueForm, Vocabulary, VocabularyParameter } from '../vocabulary';

/** A vocabulary in plain words: a line for each element, and under it one for each parameter and how it is written. */
export function describeVocabulary(vocabulary: Vocabulary): string {
  const lines = [`Vocabulary "${vocabulary.name}"`];
  for (const level of vocabulary.levels) {
    const inside = level.inside?.length
      ? ` (inside ${level.inside.map((name) => `<${name}>`).join(' ')})`
      : '';
    lines.push(`<${level.element}> is ${articles[level.is]}${inside}`);
    for (const [name, sets] of Object.entries(level.also ?? {})) {
      const set = Object.entries(sets).map(([parameter, value]) => ` and sets ${parameter} to ${value}`);
      lines.push(`  <${name}> is one too${set.join('')}`);
    }
    if (level.turns) lines.push('  regions in it are the turns of a round robin');
    if (level.rate !== undefined) lines.push(`  ${level.rate} is the sample rate of the samples in it`);
    for (const [parameter, value] of Object.entries(level.sets ?? {}))
      lines.push(`  sets ${parameter} to ${value}`);
    const width = Math.max(0, ...level.parameters.map(({ parameter }) => parameter.length));
    for (const parameter of level.parameters) {
      lines.push(
        `  ${parameter.parameter.padEnd(width)}  ${placeInWords(parameter)}: ${formInWords(parameter.form)}`,
      );
    }
  }
  if (vocabulary.keysInOrder)
    lines.push('Regions that give no keys play one key each, from the low key around them on');
  if (vocabulary.keysByRoots)
    lines.push('Regions that give root keys alone share the keys out up to the middles between roots');
  if (vocabulary.backwards) lines.push('Ranges that are written backwards are turned round');
  if (vocabulary.loops) lines.push(`Regions with loop points have loop_mode ${vocabulary.loops}`);
  for (const { element, at, words } of vocabulary.off ?? [])
    lines.push(
      `<${element}> is off where ${at === '.' ? 'its text' : at} is ${words.map((word) => (word === '' ? 'empty' : `"${word}"`)).join(' or ')}`,
    );
  for (const { element, at, words = [], are, upTo = [] } of vocabulary.takes ?? []) {
    const where = at === undefined ? '' : ` where ${at} is ${words.map((word) => `"${word}"`).join(' or ')}`;
    const how = {
      random: 'are chosen at random',
      turns: 'take turns',
      layers: `are layers of velocities up to ${listText(upTo.map(String), 'and')}`,
    }[are];
    lines.push(`Regions of the same keys in <${element}> ${how}${where}`);
  }
  const { chances } = vocabulary;
  if (chances)
    lines.push(`${chances.at} of <${chances.element}> is the chance of a region, of ${chances.whole} in all`);
  if (vocabulary.unsettled?.length) lines.push(`Not settled: ${vocabulary.unsettled.join(', ')}`);
  return `${lines.join('\n')}\n`;
}

const articles = { instrument: 'the instrument', group: 'a group', region: 'a region' } as const;

function placeInWords({ at, part }: VocabularyParameter): string {
  const place = at === '.' ? 'its text' : at;
  return part === undefined ? place : `${part === 1 ? 'first' : 'second'} part of ${place}`;
}

/** How a form writes a value, in a few plain words. */
function formInWords(form: ValueForm): string {
  return withUnitText(plainWords(form), 'unitText' in form ? form.unitText : undefined);
}

function withUnitText(words: string, unitText: string | undefined): string {
  return unitText ? `${words}, followed by "${unitText}"` : words;
}

function plainWords(form: ValueForm): string {
  switch (form.kind) {
    case 'key': {
      const offset = form.offset ? `, ${signed(form.offset)} keys` : '';
      const name = form.middleC ? `, key 60 is ${form.middleC}` : '';
      return `key ${keysWritten[form.written]}${form.naming === undefined ? '' : namings[form.naming]}${name}${offset}`;
    }
    case 'velocity':
      return `velocity from 0 to ${form.most}${form.step === undefined ? '' : `, the next layer begins ${form.step} above a high end`}`;
    case 'level':
      return `${form.attenuation ? 'attenuation' : 'level'} ${levelScalePhrases[form.unit]}`;
    case 'pan':
      return `pan from ${form.left} (left) over ${form.centre} to ${form.right} (right)${form.sides ? `, with ${form.sides.left}, ${form.sides.centre} and ${form.sides.right} for the sides` : ''}`;
    case 'tuning':
      return `${form.unit === 'ratio' ? 'tuning as a ratio of frequencies' : `tuning in ${form.unit}`}${form.measured ? ', as far as the sample is off' : ''}`;
    case 'count':
      if (form.from === 'pitch_keycenter') return 'how many keys it lies from the root key';
      return `how many ${form.from === 'lokey' ? 'keys' : 'velocities'} there are from ${form.from} on`;
    case 'position': {
      const unit = form.unit === 'fraction' ? 'as a fraction of the sample' : `in ${form.unit}`;
      const from = form.from ? `length counted from ${form.from}` : 'position';
      const first = form.first === 1 ? ', the first frame is 1' : '';
      const last = form.last === 'excluded' ? ', names the frame after the last' : '';
      const marks = form.thousands ? `, with "${form.thousands}" between thousands` : '';
      const none = form.none === undefined ? '' : `, ${form.none} for none`;
      const rate = form.rate === undefined ? '' : `, ${form.rate} frames a second`;
      const atRate = form.atRate ? ', counted at the rate beside the sample' : '';
      return `${from} ${unit}${first}${last}${marks}${none}${rate}${atRate}`;
    }
    case 'time':
      return `time in ${form.unit}`;
    case 'number':
      return `number${form.times !== undefined && form.times !== 1 ? `, multiplied by ${form.times}` : ''}${form.plus === undefined ? '' : `, plus ${form.plus}`}${form.none === undefined ? '' : `, ${form.none} for none`}`;
    case 'words': {
      const words = Object.entries(form.words).map(([word, value]) => `"${word}" = ${value}`);
      return `words ${words.join(', ')}`;
    }
    case 'path': {
      const folder = form.folder ? `, in the folder "${form.folder}"` : '';
      const ending = form.ending ? `, without its ending "${form.ending}"` : '';
      const under = form.under
        ? `, in the folder that ${form.under}${form.under.startsWith('//') ? '' : ' of an element around'} names`
        : '';
      if (form.list)
        return `the ${form.list.key.slice(1)} of a <${form.list.element}>, whose ${form.list.path} is the path${folder}${ending}`;
      return `path of the audio file${folder}${under}${ending}`;
    }
    case 'text':
      return 'text';
  }
}

const namings = {
  german: ' as in German',
  syllables: ' in syllables',
  lines: ' with octaves by letter case and number',
  'german lines': ' as in German, with octaves by letter case and number',
} as const;
const keysWritten = {
  name: 'by note name',
  number: 'number',
  hexadecimal: 'number in hexadecimal',
  frequency: 'frequency in Hz',
} as const;

function signed(value: number): string {
  return value < 0 ? `${value}` : `+${value}`;
}
