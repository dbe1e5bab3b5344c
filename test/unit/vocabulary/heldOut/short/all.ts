import { apiary } from './apiary';
import { bakery } from './bakery';
import { bottling } from './bottling';
import { canal } from './canal';
import { cloister } from './cloister';
import { dam } from './dam';
import { faro } from './faro';
import { ferry } from './ferry';
import { foundry } from './foundry';
import { glasshouse } from './glasshouse';
import { harbour } from './harbour';
import { kennel } from './kennel';
import { lamp } from './lamp';
import { library } from './library';
import { loom } from './loom';
import { obstgarten } from './obstgarten';
import { press } from './press';
import { ropery } from './ropery';
import type { Short } from './short';
import { smithy } from './smithy';
import { tramway } from './tramway';
import { uhrwerk } from './uhrwerk';

/** Short texts in the unlike styles of people and programs. */
export const short: Readonly<Record<string, Short>> = {
  apiary,
  bakery,
  bottling,
  canal,
  cloister,
  dam,
  faro,
  ferry,
  foundry,
  glasshouse,
  harbour,
  kennel,
  lamp,
  library,
  loom,
  obstgarten,
  press,
  ropery,
  smithy,
  tramway,
  uhrwerk,
};
