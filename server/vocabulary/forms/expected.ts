import type { ValueForm } from '../vocabulary';

const shareNames = {
  factor: 'a factor',
  percent: 'a percentage',
  sevenBits: 'a number up to 127',
  eightBits: 'a number up to 255',
} as const;

/** What a value in a form has to be, for messages: `a key number or a note name such as C3`. */
export function expectedOf(form: ValueForm): string {
  switch (form.kind) {
    case 'key':
      return `a key number or a note name; key 60 is ${form.middleC ?? 'C4'}`;
    case 'velocity':
      return `a velocity from 0 to ${form.most}`;
    case 'level':
      return form.unit === 'dB' || form.unit === 'centibels'
        ? `a level in ${form.unit}`
        : `a level as ${shareNames[form.unit]}, 0 or more`;
    case 'pan':
      return `a position from ${form.left} (left) to ${form.right} (right)`;
    case 'tuning':
      return form.unit === 'ratio' ? 'a ratio of frequencies, above 0' : `a number of ${form.unit}`;
    case 'count':
      if (form.from === 'pitch_keycenter') return 'a number of keys from the root key';
      return `a number of ${form.from === 'lokey' ? 'keys' : 'velocities'}, 1 or more`;
    case 'position':
      return form.unit === 'fraction' || form.unit === 'percent'
        ? `a ${form.unit === 'percent' ? 'percentage' : 'fraction'} of the sample's length`
        : `a place in the sample in ${form.unit}, 0 or more`;
    case 'time':
      return `a number of ${form.unit}`;
    case 'number':
      return 'a number';
    case 'words': {
      const words = Object.keys(form.words);
      return words.length > 12
        ? `${words.slice(0, 12).join(', ')} or another word`
        : `one of ${words.join(', ')}`;
    }
    case 'path':
      return form.list
        ? `the ${form.list.key.startsWith('#') ? 'position' : form.list.key.replace(/^@/, '')} of a <${form.list.element}>`
        : 'a path to an audio file';
    case 'text':
      return 'a text';
  }
}
