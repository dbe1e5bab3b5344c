import type { Spelling } from '../model/notation';
import { encodeXmlAttribute } from './references';

const holdsElements: ReadonlySet<string> = new Set(['global', 'master', 'group']);

/** How instrument XML spells what a person starts to type. */
export const xmlSpelling: Spelling = {
  parameter: (name) => [`${name}="`, '"'],
  value: (text) => encodeXmlAttribute(text).text,
  header(name, rest) {
    if (rest.trim() !== '') return [name, ''];
    return holdsElements.has(name) ? [`${name} `, `></${name}>`] : [`${name} `, '/>'];
  },
};
