import { brewery } from './brewery';
import type { Example } from './example';
import { foundry } from './foundry';
import { harbour } from './harbour';
import { observatory } from './observatory';
import { orchard } from './orchard';
import { organLoft } from './organLoft';
import { railway } from './railway';
import { weavingMill } from './weavingMill';

export type { Example, TrueValues } from './example';

/** Eight invented vocabularies, unlike each other in all that one can say, each with an instrument of 200 regions. */
export const examples: Readonly<Record<string, Example>> = {
  foundry: foundry(),
  orchard: orchard(),
  harbour: harbour(),
  weavingMill: weavingMill(),
  observatory: observatory(),
  brewery: brewery(),
  organLoft: organLoft(),
  railway: railway(),
};
