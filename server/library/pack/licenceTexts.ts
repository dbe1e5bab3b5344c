import type { InstrumentFacts } from '../libraryFile';

/** What to do before a pack is passed on. */
export const sharingCaution =
  'Recordings belong to those who made them. Share this only where its licence lets you, and ask the maker where it does not say. The law differs by country.';

const unknownLicence = `No licence is known for these recordings. ${sharingCaution}`;

/** The licence of a pack and who is to be named, as texts by the names of their files. Nothing in them is made up. */
export function licenceTexts(name: string, facts: InstrumentFacts): [path: string, text: string][] {
  const { title = name, maker, licence, source, credits = [], tags = [] } = facts;
  const lines = [
    title,
    ...(maker === undefined ? [] : [`Maker: ${maker}`]),
    `Licence: ${licence ?? 'not known'}`,
    ...(source === undefined ? [] : [`Source: ${source}`]),
    ...credits,
    ...(tags.length === 0 ? [] : [`Tags: ${tags.join(', ')}`]),
  ];
  return [
    ['LICENCE.txt', `${licence ?? unknownLicence}\n`],
    ['CREDITS.txt', `${lines.join('\n')}\n`],
  ];
}
