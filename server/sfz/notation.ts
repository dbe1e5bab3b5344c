import type { Notation } from '../model/notation';
import { editSfz } from './edit';
import { formatSfz } from './format';
import { placeInSfz } from './place';
import { readSfz, readSfzInSteps } from './read';
import { sfzSpelling } from './spelling';
import { writeSfz } from './write';

/** SFZ text as a notation of the instrument model. */
export const sfzNotation: Notation = {
  format: 'sfz',
  read: readSfz,
  readInSteps: readSfzInSteps,
  placeAt: placeInSfz,
  edit: editSfz,
  write: writeSfz,
  layOut: formatSfz,
  spelling: sfzSpelling,
};
