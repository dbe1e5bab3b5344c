import type { Spelling } from '../model/notation';

/** How SFZ text spells what a person starts to type. */
export const sfzSpelling: Spelling = {
  parameter: (name) => [`${name}=`, ''],
  value: (text) => text,
  header: (name, rest) => [`${name}>`, '', rest.startsWith('>') ? 1 : 0],
  headerAmongNames: (name) => `<${name}>`,
};
