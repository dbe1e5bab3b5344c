import { HeaderKind, headerNames } from '../model/headerKinds';
import type { OpcodeFacts } from '../model/opcodes/opcode';
import { boundsOf } from '../model/opcodes/values';

const levels: Readonly<Record<OpcodeFacts['level'], string>> = {
  v1: 'SFZ version 1',
  v2: 'SFZ version 2',
  extension: 'an extension in common use',
};

/** What a value has to be, in a few words: `whole number in cents, -100 to 100`. */
export function valueText(facts: OpcodeFacts): string {
  const unit = facts.unit === undefined ? '' : ` in ${facts.unit}`;
  const { min, max } = boundsOf(facts);
  const bounds =
    min !== undefined && max !== undefined
      ? `, ${min} to ${max}`
      : min !== undefined
        ? `, ${min} or more`
        : max !== undefined
          ? `, ${max} or less`
          : '';
  switch (facts.kind) {
    case 'key':
      return `key number or note name${bounds}`;
    case 'whole':
      return `whole number${unit}${bounds}`;
    case 'number':
      return `number${unit}${bounds}`;
    case 'option':
      return `one of ${facts.options.map((option) => `\`${option}\``).join(', ')}`;
    case 'path':
      return 'path';
    case 'text':
      return 'text';
    case 'any':
      return 'value';
  }
}

/** The headers that take an opcode, where it is not all that sound can have; empty where nothing is to be said. */
function headersText({ headers }: OpcodeFacts): string {
  const sounding = [HeaderKind.global, HeaderKind.master, HeaderKind.group, HeaderKind.region];
  if (sounding.every((kind) => (headers & (1 << kind)) !== 0)) return '';
  const named = headerNames.filter((_, kind) => kind !== HeaderKind.midi && (headers & (1 << kind)) !== 0);
  return named.length === 0 ? '' : `Under: ${named.join(', ')}.`;
}

/** What the catalogue says of an opcode, as Markdown. */
export function opcodeMarkdown(facts: OpcodeFacts): string {
  const fallback = facts.defaultText === undefined ? '' : ` Default: \`${facts.defaultText}\`.`;
  const aliases =
    facts.aliases.length === 0
      ? ''
      : `Also spelt ${facts.aliases.map((alias) => `\`${alias}\``).join(', ')}.`;
  const value = valueText(facts);
  return [
    facts.description,
    `${value.charAt(0).toUpperCase()}${value.slice(1)}.${fallback}`,
    [headersText(facts), aliases, `From ${levels[facts.level]}.`].filter(Boolean).join(' '),
  ].join('\n\n');
}
