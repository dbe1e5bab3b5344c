import { apiary } from './apiary';
import { bakery } from './bakery';
import { faro } from './faro';
import { foundry } from './foundry';
import { glasshouse } from './glasshouse';
import { harbour } from './harbour';
import { loom } from './loom';
import { obstgarten } from './obstgarten';
import { press } from './press';
import type { Short } from './short';
import { tramway } from './tramway';

/** Short texts in the unlike styles of people and programs. */
export const short: Readonly<Record<string, Short>> = {
  apiary,
  bakery,
  faro,
  foundry,
  glasshouse,
  harbour,
  loom,
  obstgarten,
  press,
  tramway,
};
