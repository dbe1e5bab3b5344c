import type { Spelling } from '../model/notation';
import { quoteBefore } from './scan/quotes';
import { encodeXmlAttribute } from './scan/references';
import { restOfTag } from './scan/restOfTag';

const holdsElements: ReadonlySet<string> = new Set(['global', 'master', 'group']);

/** How instrument XML spells what a person starts to type. */
export const xmlSpelling: Spelling = {
  parameter: (name) => [`${name}="`, '"'],
  value(text, at) {
    const { text: encoded } = encodeXmlAttribute(text);
    const isSingle = at !== undefined && quoteBefore(at.text, at.start) === "'";
    return isSingle ? encoded.replaceAll("'", '&apos;') : encoded;
  },
  header(name, rest) {
    const behind = restOfTag(rest, name);
    if (behind.kind === 'more') return [name, ''];
    const taken = behind.kind === 'bracket' ? behind.length : 0;
    return [`${name} `, holdsElements.has(name) ? `></${name}>` : '/>', taken];
  },
};
