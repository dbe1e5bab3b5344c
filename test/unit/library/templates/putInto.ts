import type { TemplateResult } from '../../../../server/library/templates/intoTemplate';
import { intoTemplate } from '../../../../server/library/templates/intoTemplate';

import type { Instrument } from '../../../../server/model/instrument';
import type { Notation } from '../../../../server/model/notation';
import { notations } from '../../../../server/workspace/notations/notationOf';

export interface PutInto extends TemplateResult {
  result: Instrument;
}

/** Puts a text in SFZ into a template in a notation, and reads the result. */
export async function putInto(
  template: string,
  source: string,
  facts: Readonly<Record<string, string>> = {},
  notation: Notation = notations.sfz,
): Promise<PutInto> {
  const read = async (text: string) => notation.read(text, { path: '/out/result' });
  const made = await intoTemplate(
    { text: template, notation, read },
    {
      instrument: notations.sfz.read(source, { path: '/in/source.sfz' }),
      folder: undefined,
      targetFolder: undefined,
      facts: new Map(Object.entries(facts)),
    },
  );
  return { ...made, result: await read(made.text) };
}
